using FsCheck.Xunit;
using RoutingRules.Checking.Rules.Documents;
using RoutingRules.Checking.Rules.Feeds;
using RoutingRules.Checking.Rules.Points;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Rules;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Checking.Rules.Points;

public sealed class OutputOrphanedTests
{
    private static readonly OutputOrphaned Rule = new();

    private static Show Base =>
        Of(("desk", SmallProfiles.Console), ("box", SmallProfiles.Box), ("amp", SmallProfiles.Amplifier), ("free", SmallProfiles.FreeBox))
            .With(Stream("s2", "desk/transmit/5-8", "box/receive/5-8"));

    private static Show WithCables(params Cable[] cables) => Base with { Rig = Base.Rig with { Cables = cables.ToValueList() } };

    [Fact]
    public void A_pinned_feed_that_is_missing_is_told_by_the_rule_about_feeds_alone()
    {
        var mix = Feed("mix", FeedRole.Monitor, "desk/aux/5", "box/out/5");
        var left = Feed("l", FeedRole.Main, "desk/main/1", "desk/out/1");

        OneFinding("RR3001", Base with { Feeds = [mix] });
        OneFinding("RR3001", Base.With(Route(null, "desk/out/1")) with { Feeds = [left] });
        OneFinding(
            "RR3003",
            Base.With(Route("desk/aux/5", "desk/transmit/6")) with
            {
                Feeds = [Feed("mix", FeedRole.Monitor, "desk/aux/5", "box/out/5", "box/out/6")],
            }
        );
    }

    [Fact]
    public void A_pinned_feed_whose_bus_does_not_exist_is_told_by_the_rule_about_the_document_alone()
    {
        OneFinding("RR1103", Base with { Feeds = [Feed("mix", FeedRole.Monitor, "desk/aux/99", "box/out/5")] });
    }

    [Fact]
    public void A_cable_behind_a_silent_output_is_noted_for_its_device_even_when_the_bus_of_its_feed_does_not_exist()
    {
        var show = WithCables(Cable("box/out/5", "amp/in/1")) with { Feeds = [Feed("mix", FeedRole.Monitor, "desk/aux/99", "amp/in/1")] };

        Assert.Equal(["box"], RuleTester.Findings(new OutputOrphaned(), show).Select(finding => finding.Entities[0].Id));
        Assert.Equal(
            "Outputs of 'box' are cabled but carry nothing, and no feed whose source exists asks for them: box/out/5.",
            Assert.Single(RuleTester.Findings(new OutputOrphaned(), show)).Message
        );
        Assert.Equal(
            "Outputs of 'box' are cabled but carry nothing, and no feed asks for them: box/out/5.",
            Assert.Single(RuleTester.Findings(new OutputOrphaned(), show with { Feeds = default })).Message
        );
    }

    [Fact]
    public void A_missing_feed_pinned_behind_a_labelled_cable_is_told_by_the_rule_about_feeds_alone()
    {
        var show = WithCables(Cable("box/out/5", "amp/in/1"));
        show = show with { Patch = show.Patch with { Labels = [new() { At = At("box/out/5"), Text = "WEDGE" }] } };

        OneFinding("RR3001", show with { Feeds = [Feed("mix", FeedRole.Monitor, "desk/aux/5", "amp/in/1")] });
    }

    [Fact]
    public void A_route_to_an_output_from_an_empty_slot_gives_one_warning() =>
        Expect.One(
            Rule,
            Base.With(Route("free/receive/1-2", "free/out/1-2")),
            Severity.Warning,
            "/patch/routes/0",
            "free/out/1-2 are silent: no stream fills free/receive/1-2. A route of the patch leads there.",
            "output=free/out/1-2"
        );

    [Fact]
    public void A_cabled_silent_output_with_a_label_gives_one_warning()
    {
        var show = WithCables(Cable("box/out/5", "amp/in/1"));

        Expect.One(
            Rule,
            show with
            {
                Patch = show.Patch with { Labels = [new() { At = At("box/out/5"), Text = "WEDGE" }] },
            },
            Severity.Warning,
            "/rig/cables/0",
            "box/out/5 is silent: nothing is routed to desk/transmit/5. A cable leads on to amp/in/1.",
            "output=box/out/5"
        );
    }

    [Fact]
    public void A_cabled_output_behind_a_route_of_the_patch_gives_one_warning()
    {
        var relay = SmallProfiles.FreeBox with { Id = new("test/relay"), Routing = [SmallProfiles.Entry("receive", "transmit", RoutingMode.Free)] };
        var show = Of(("mid", relay), ("box", SmallProfiles.Box), ("amp", SmallProfiles.Amplifier)).With(Stream("s1", "mid/transmit/1-4", "box/receive/1-4"));
        show = show.With(Route("mid/receive/1", "mid/transmit/1"));

        Expect.One(
            Rule,
            show with
            {
                Rig = show.Rig with { Cables = [Cable("box/out/1", "amp/in/1")] },
            },
            Severity.Warning,
            "/rig/cables/0",
            "box/out/1 is silent: no stream fills mid/receive/1. A cable leads on to amp/in/1.",
            "output=box/out/1"
        );
    }

    [Fact]
    public void Idle_cabled_outputs_give_one_note_for_each_device() =>
        Expect.One(
            Rule,
            WithCables(Cable("box/out/1-2", "amp/in/1-2"), Cable("box/out/7", "amp/in/3")),
            Severity.Note,
            "/rig/devices/1",
            "Outputs of 'box' are cabled but carry nothing, and no feed asks for them: box/out/1-2 and box/out/7.",
            "device=box",
            "output=box/out/1-2",
            "output=box/out/7"
        );

    [Fact]
    public void Of_two_silent_outputs_one_behind_the_other_the_first_is_named()
    {
        var show = WithCables(Cable("box/out/5", "amp/in/1"), Cable("amp/out/1", "free/in/1"));
        show = show with { Patch = show.Patch with { Labels = [new() { At = At("amp/out/1"), Text = "SEND" }] } };

        Expect.One(
            Rule,
            show,
            Severity.Warning,
            "/rig/cables/1",
            "box/out/5 is silent: nothing is routed to desk/transmit/5. A cable leads on to free/in/1.",
            "output=box/out/5"
        );
    }

    [Fact]
    public void Used_outputs_with_a_source_give_none()
    {
        var show = WithCables(Cable("desk/out/1-2", "amp/in/1-2"), Cable("box/out/5", "amp/in/3")).With(Route("desk/aux/5", "desk/transmit/5"));

        Expect.None(Rule, show with { Feeds = [Feed("l", FeedRole.Main, "desk/main/1", "amp/in/1"), Feed("m", FeedRole.Monitor, "desk/aux/5", "box/out/5")] });
    }

    [Fact]
    public void Silent_outputs_that_nothing_uses_give_none() => Expect.None(Rule, Base);

    [Fact]
    public void A_label_without_a_cable_is_no_use() =>
        Expect.None(Rule, Base with { Patch = Base.Patch with { Labels = [new() { At = At("box/out/5"), Text = "WEDGE" }] } });

    [Fact]
    public void Cabled_outputs_that_are_cleared_dead_or_reserved_give_none()
    {
        var show = WithCables(Cable("desk/out/1", "amp/in/1"), Cable("box/out/1", "amp/in/2"), Cable("box/out/2", "amp/in/3")).With(Route(null, "desk/out/1"));

        Expect.None(Rule, show with { Rig = show.Rig with { Unavailable = [new() { At = At("box/out/1") }], Reserved = [new() { At = At("box/out/2") }] } });
    }

    [Fact]
    public void What_other_rules_explain_gives_none()
    {
        var feed = Feed("mix", FeedRole.Monitor, "desk/aux/1", "box/out/1");
        Expect.None(Rule, Base.With(Stream("s1", "desk/transmit/1-4", "box/receive/1-3")) with { Feeds = [feed] });
        Expect.None(Rule, Base.With(Stream("s1", "gone/transmit/1-4", "box/receive/1-4")) with { Feeds = [feed] });
        Expect.None(
            Rule,
            Base.With(Route(null, "desk/transmit/5"), Route("desk/aux/5", "desk/transmit/5")) with
            {
                Feeds = [Feed("mix", FeedRole.Monitor, "desk/aux/5", "box/out/5")],
            }
        );
    }

    [Fact]
    public void Half_a_pinned_pair_is_told_by_the_rule_about_pairs_alone()
    {
        var show = WithCables(Cable("box/out/5-6", "amp/in/1-2")).With(Route("desk/aux/5", "desk/transmit/5"));

        OneFinding("RR3005", show with { Feeds = [Feed("mix", FeedRole.Monitor, "desk/aux/5-6", "box/out/5-6")] });
        OneFinding("RR3005", show with { Feeds = [Feed("mix", FeedRole.Monitor, "desk/aux/5-6", "amp/out/1-2")] });
    }

    private static void OneFinding(string rule, Show show)
    {
        Rule[] rules = [new OutputOrphaned(), new FeedNotDelivered(), new FanOutLost(), new PairSplit(), new PointOutOfRange()];
        Assert.Equal([rule], rules.SelectMany(each => RuleTester.Findings(each, show)).Select(finding => finding.Rule));
    }

    [Property(Arbitrary = [typeof(CleanShows)])]
    public void A_clean_show_has_none_and_one_slot_cleared_is_told_by_the_rule_about_feeds_alone(CleanShow clean)
    {
        var routes = clean.Show.Patch.Routes.ToArray();
        routes[0] = Route(null, "desk/transmit/1");

        Expect.None(Rule, clean.Show);
        OneFinding("RR3001", clean.Show.With(routes));
    }

    [Property(Arbitrary = [typeof(CleanShows)])]
    public void Titles_labels_and_the_order_of_routes_keep_the_identities(CleanShow clean, string text)
    {
        var show = clean.Show.With([Route(null, "desk/transmit/1-2"), .. clean.Show.Patch.Routes.Skip(2)]);
        var renamed = show with { Title = text ?? "", Feeds = show.Feeds.Select(feed => feed with { Name = text }).ToValueList() };

        Assert.Equal(Expect.Fingerprints(Rule, show), Expect.Fingerprints(Rule, renamed.With([.. show.Patch.Routes.Reverse()])));
    }

    [Fact]
    public void A_pin_without_a_source_in_or_behind_a_loop_ends()
    {
        DeviceProfile processor = new()
        {
            Id = new("test/processor"),
            Kind = DeviceKind.Processor,
            Name = "Test processor",
            PortGroups = [SmallProfiles.Group("in", PortKind.Input, 2), SmallProfiles.Group("out", PortKind.Output, 2)],
            Through =
            [
                new()
                {
                    Kind = ThroughKind.Process,
                    From = new("in"),
                    To = new("out"),
                },
            ],
        };
        var rig = Of(("desk", SmallProfiles.Console), ("a", processor), ("b", processor), ("c", processor));
        var show = rig with
        {
            Rig = rig.Rig with { Cables = [Cable("a/out/1", "b/in/1"), Cable("b/out/1", "a/in/1"), Cable("b/out/1", "c/in/1")] },
            Feeds = [Feed("mix", FeedRole.Monitor, "desk/aux/99", "b/out/1"), Feed("other", FeedRole.Monitor, "desk/aux/98", "c/out/1")],
        };

        Assert.All(RuleTester.Findings(new OutputOrphaned(), show), finding => Assert.Equal(Severity.Note, finding.Severity));
    }
}
