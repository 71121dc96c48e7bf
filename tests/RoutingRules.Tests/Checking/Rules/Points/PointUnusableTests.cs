using RoutingRules.Checking.Rules.Points;
using RoutingRules.Model;
using RoutingRules.Rules;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Checking.Rules.Points;

public sealed class PointUnusableTests
{
    private static readonly PointUnusable Rule = new();

    private static Show Marked(string? dead, string? reserved = null)
    {
        var show = Of(("desk", SmallProfiles.Console), ("box", SmallProfiles.Box), ("free", SmallProfiles.FreeBox))
            .With(Stream("s", "desk/transmit/1-4", "box/receive/1-4"), Stream("t", "box/transmit/1-4", "desk/receive/1-4"));
        return show with
        {
            Rig = show.Rig with
            {
                Unavailable = dead is null ? [] : [new() { At = At(dead), Reason = "crackles" }],
                Reserved = reserved is null ? [] : [new() { At = At(reserved) }],
            },
        };
    }

    [Theory]
    [InlineData("main", Severity.Error)]
    [InlineData("in-ear", Severity.Error)]
    [InlineData("monitor", Severity.Warning)]
    public void A_feed_on_a_dead_output_is_reported(string role, Severity severity) =>
        Expect.One(
            Rule,
            Marked("box/out/1-2") with
            {
                Feeds = [Feed("mix", new FeedRole(role), "desk/aux/2", "box/out/2")],
            },
            severity,
            "/rig/unavailable/0",
            "box/out/1-2 do not work (crackles), but are used by feed 'mix'.",
            "dead=box/out/1-2"
        );

    [Fact]
    public void A_feed_on_a_reserved_output_is_a_warning_even_for_mains() =>
        Expect.One(
            Rule,
            Marked(null, "box/out/1") with
            {
                Feeds = [Feed("main", FeedRole.Main, "desk/aux/1", "box/out/1")],
            },
            Severity.Warning,
            "/rig/reserved/0",
            "box/out/1 is reserved, but is used by feed 'main'.",
            "reserved=box/out/1"
        );

    [Fact]
    public void A_line_on_a_dead_input_is_reported() =>
        Expect.One(
            Rule,
            Marked("box/in/3") with
            {
                Lines = [Line("vox", "box/in/3", "desk/channel/3")],
            },
            Severity.Warning,
            "/rig/unavailable/0",
            "box/in/3 does not work (crackles), but is used by line 'vox'.",
            "dead=box/in/3"
        );

    [Fact]
    public void A_route_to_a_reserved_output_is_reported() =>
        Expect.One(
            Rule,
            Marked(null, "free/out/1").With(Route("free/in/1", "free/out/1")),
            Severity.Warning,
            "/rig/reserved/0",
            "free/out/1 is reserved, but is used by the route to free/out/1.",
            "reserved=free/out/1"
        );

    [Fact]
    public void A_label_with_the_name_of_another_point_counts_as_use_and_a_label_of_its_own_does_not()
    {
        var show = Marked("box/in/3");
        Expect.One(
            Rule,
            show with
            {
                Patch = show.Patch with { Labels = [new() { At = At("box/in/3"), Text = "VOX" }, new() { At = At("desk/channel/3"), Text = "VOX" }] },
            },
            Severity.Warning,
            "/rig/unavailable/0",
            "box/in/3 does not work (crackles), but is used by label 'VOX'.",
            "dead=box/in/3"
        );
        Expect.None(Rule, show with { Patch = show.Patch with { Labels = [new() { At = At("box/in/3"), Text = "DEAD" }] } });
    }

    [Fact]
    public void A_cable_in_a_dead_output_is_reported_here_and_nowhere_else()
    {
        var show = Of(("box", SmallProfiles.Box), ("amp", SmallProfiles.Amplifier));
        show = show with
        {
            Rig = show.Rig with { Cables = [Cable("box/out/1", "amp/in/2")], Unavailable = [new() { At = At("box/out/1"), Reason = "crackles" }] },
        };

        var finding = Assert.Single(
            RoutingEngine.CreateBuilder().Build().Check(show).Findings,
            finding => finding.Entities.Any(entity => entity.Id == "box/out/1")
        );
        Assert.Equal(("RR2013", Severity.Warning, "/rig/unavailable/0"), (finding.Rule, finding.Severity, finding.Pointer));
        Assert.Equal("box/out/1 does not work (crackles), but is used by the cable to amp/in/2.", finding.Message);
    }

    [Fact]
    public void A_cable_in_a_dead_input_is_reported_and_one_in_a_reserved_point_is_not()
    {
        var cabled = Marked("desk/in/2");
        cabled = cabled with { Rig = cabled.Rig with { Cables = [Cable("box/out/1", "desk/in/2")] } };

        Expect.One(
            Rule,
            cabled,
            Severity.Warning,
            "/rig/unavailable/0",
            "desk/in/2 does not work (crackles), but is used by the cable from box/out/1.",
            "dead=desk/in/2"
        );
        Expect.None(Rule, cabled with { Rig = cabled.Rig with { Unavailable = [], Reserved = [new() { At = At("box/out/1") }] } });
    }

    [Fact]
    public void Marked_points_that_nothing_uses_are_fine() =>
        Expect.None(
            Rule,
            Marked("box/out/8", "box/in/8") with
            {
                Feeds = [Feed("mix", FeedRole.Main, "desk/aux/1", "box/out/1")],
                Lines = [Line("vox", "box/in/1", "desk/channel/1")],
            }
        );
}
