using FsCheck.Xunit;
using RoutingRules.Checking.Rules.Feeds;
using RoutingRules.Checking.Rules.Points;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Rules;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Checking.Rules.Points;

public sealed class OutputStrayTests
{
    private static readonly OutputStray Rule = new();

    /// <summary>The desk's own outputs are cleared, so that only what a test adds can be stray.</summary>
    private static readonly Route Quiet = Route(null, "desk/out/1-2");

    private static Show Base =>
        Of(("desk", SmallProfiles.Console), ("box", SmallProfiles.Box), ("amp", SmallProfiles.Amplifier), ("free", SmallProfiles.FreeBox))
            .With(Stream("s1", "desk/transmit/1-4", "box/receive/1-4"))
            .With(Quiet) with
        {
            Feeds = [Feed("mix", FeedRole.Monitor, "desk/aux/1", "box/out/1")],
        };

    private static Show Silent => Base.With(Quiet, Route(null, "desk/transmit/2-4"));

    [Fact]
    public void Leftovers_that_travel_in_a_stream_give_one_finding() =>
        Expect.One(
            Rule,
            Base,
            Severity.Warning,
            "/patch/streams/0",
            "box/out/2-4 carry desk/aux/2-4, but no feed has them there.",
            "output=box/out/2-4",
            "source=desk/aux/2-4"
        );

    [Fact]
    public void A_route_that_brings_a_bus_without_a_feed_is_pointed_at() =>
        Expect.One(
            Rule,
            Base.With(Quiet, Route(null, "desk/transmit/3-4"), Route("desk/main/2", "desk/transmit/2")),
            Severity.Warning,
            "/patch/routes/2",
            "box/out/2 carries desk/main/2, but no feed has it there.",
            "output=box/out/2",
            "source=desk/main/2"
        );

    [Fact]
    public void A_second_output_of_a_served_feed_is_stray() =>
        Expect.One(
            Rule,
            Base.With(Quiet, Route(null, "desk/transmit/3-4"), Route("desk/aux/1", "desk/transmit/2")),
            Severity.Warning,
            "/patch/routes/2",
            "box/out/2 carries desk/aux/1, but no feed has it there.",
            "output=box/out/2",
            "source=desk/aux/1"
        );

    [Fact]
    public void A_cabled_output_with_a_factory_route_gives_one_finding() =>
        Expect.One(
            Rule,
            Silent.With(Route(null, "desk/transmit/2-4"), Route(null, "desk/out/2")) with
            {
                Rig = Base.Rig with { Cables = [Cable("desk/out/1", "amp/in/1")] },
            },
            Severity.Warning,
            "/rig/cables/0",
            "desk/out/1 carries desk/main/1, but no feed has it there.",
            "output=desk/out/1",
            "source=desk/main/1"
        );

    [Fact]
    public void A_labelled_output_with_a_factory_route_gives_one_finding()
    {
        var show = Silent.With(Route(null, "desk/transmit/2-4"), Route(null, "desk/out/2"));

        Expect.One(
            Rule,
            show with
            {
                Patch = show.Patch with { Labels = [new() { At = At("desk/out/1"), Text = "TALK" }] },
            },
            Severity.Warning,
            "/rig/devices/0",
            "desk/out/1 carries desk/main/1, but no feed has it there.",
            "output=desk/out/1",
            "source=desk/main/1"
        );
    }

    [Fact]
    public void Factory_leftovers_give_one_note_for_each_device() =>
        Expect.One(
            Rule,
            Silent.With(Route(null, "desk/transmit/2-4")),
            Severity.Note,
            "/rig/devices/0",
            "Outputs of 'desk' still carry what they carry without any patching, and no feed asks for it: desk/out/1-2.",
            "device=desk",
            "output=desk/out/1-2"
        );

    [Fact]
    public void A_served_feed_and_what_lies_behind_it_give_none()
    {
        Expect.None(Rule, Silent);
        Expect.None(Rule, Silent with { Rig = Base.Rig with { Cables = [Cable("box/out/1", "amp/in/1")] } });
        Expect.None(
            Rule,
            Silent with
            {
                Rig = Base.Rig with { Cables = [Cable("box/out/1", "amp/in/1")] },
                Feeds = [Feed("mix", FeedRole.Monitor, "desk/aux/1", "amp/out/1")],
            }
        );
    }

    [Fact]
    public void Without_any_feed_nothing_is_stray() => Expect.None(Rule, Base with { Feeds = [] });

    [Fact]
    public void A_feed_that_is_not_served_in_full_is_left_to_the_feed_rules()
    {
        var show = Silent with { Feeds = [Feed("mix", FeedRole.Monitor, "desk/aux/1", "box/out/7")] };

        Expect.None(Rule, show);
        Assert.NotEmpty(RuleTester.Findings(new FeedNotDelivered(), show));
    }

    [Fact]
    public void A_feed_placed_at_a_receive_slot_covers_the_output_behind_it() =>
        Expect.None(Rule, Silent with { Feeds = [Feed("mix", FeedRole.Monitor, "desk/aux/1", "box/receive/1")] });

    [Fact]
    public void The_signals_of_lines_give_none_and_other_microphones_patched_out_give_one()
    {
        var show = Silent.With(Quiet, Route(null, "desk/transmit/2-4"), Route("free/in/1", "free/out/1"));

        Expect.None(Rule, show with { Lines = [Line("kick", "free/in/1", "free/out/1")] });
        Expect.One(
            Rule,
            show,
            Severity.Warning,
            "/patch/routes/2",
            "free/out/1 carries free/in/1, but no feed has it there.",
            "output=free/out/1",
            "source=free/in/1"
        );
    }

    [Fact]
    public void An_output_that_brings_a_signal_to_channels_gives_none()
    {
        var rack = SmallProfiles.Amplifier with
        {
            Id = new("test/rack"),
            PortGroups = [SmallProfiles.Group("rf", PortKind.Source, 4), SmallProfiles.Group("out", PortKind.Output, 4)],
            Through = [],
            Routing = [SmallProfiles.Entry("rf", "out", RoutingMode.Free)],
        };
        var show = Silent;
        show = show with
        {
            Rig = show.Rig with
            {
                Devices = [.. show.Rig.Devices, new() { Id = new("rack"), Profile = rack.Id }],
                Profiles = [.. show.Rig.Profiles, rack],
                Cables = [Cable("rack/out/1", "desk/in/1")],
            },
            Patch = show.Patch with { Routes = [.. show.Patch.Routes, Route("rack/rf/1", "rack/out/1"), Route("desk/in/1", "desk/channel/1")] },
        };

        Expect.None(Rule, show);
        Expect.None(
            Rule,
            show with
            {
                Lines =
                [
                    new()
                    {
                        Id = new("vox"),
                        Kind = LineKind.Line,
                        From = new() { Source = At("rack/rf/1") },
                        To = [At("desk/channel/1")],
                    },
                ],
            }
        );
    }

    [Property(Arbitrary = [typeof(CleanShows)])]
    public void A_clean_show_has_only_the_note_about_its_desk_and_one_bus_too_many_gives_one_warning(CleanShow clean)
    {
        var quiet = clean.Show.With([Quiet, .. clean.Show.Patch.Routes]);
        var extra = clean.Show.With([Route("desk/main/2", "desk/out/1"), Route(null, "desk/out/2"), .. clean.Show.Patch.Routes]);

        Expect.None(Rule, quiet);
        Assert.Equal(["device=desk"], RuleTester.Findings(Rule, clean.Show).Select(finding => $"{finding.Entities[0].Role}={finding.Entities[0].Id}"));
        Assert.Equal(["desk/out/1"], RuleTester.Findings(Rule, extra).Select(finding => finding.Entities[0].Id));
    }
}
