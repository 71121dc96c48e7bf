using RoutingRules.Model;
using RoutingRules.Planning.Losses;
using RoutingRules.Reports.Answers;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;
using static RoutingRules.Tests.Planning.Losses.ImpactRig;

namespace RoutingRules.Tests.Planning.Losses;

/// <summary>Plans in which something less important gives up its place.</summary>
public sealed class FallbackYieldingTests
{
    /// <summary>A club: the main on the left box, four wedges on the right one, each box with room for four and no more.</summary>
    private static Show Club(string wedgePriority, params Cable[] more)
    {
        var box = SmallProfiles.FreeBox with
        {
            PortGroups = SmallProfiles.FreeBox.PortGroups.Select(group => group.Id.Value == "out" ? group with { Count = 4 } : group).ToValueList(),
        };
        var console = SmallProfiles.Console with
        {
            PortGroups = SmallProfiles
                .Console.PortGroups.Select(group => group.Id.Value == "out" ? group with { Count = more.Length > 0 ? 2 : 1 } : group)
                .ToValueList(),
            FactoryRoutes = [],
        };
        var show = Of(("desk", console), ("left", box), ("right", box), ("amp", SmallProfiles.Amplifier));
        return (
            show with
            {
                Rig = show.Rig with
                {
                    Links = [Link("one", "desk/net/1", "left/net/1"), Link("two", "desk/net/2", "right/net/1")],
                    Cables = [Cable("left/out/1", "amp/in/1"), .. more],
                    Reserved = [new() { At = At("desk/out/1"), Reason = "guest desk" }],
                },
                Feeds =
                [
                    Feed("main", FeedRole.Main, "desk/main/1", "amp/in/1") with
                    {
                        Priority = Priority.Critical,
                    },
                    .. Enumerable
                        .Range(1, 4)
                        .Select(i =>
                            Feed($"wedge-{i}", FeedRole.Monitor, $"desk/aux/{i}", $"right/out/{i}") with
                            {
                                Priority = Enum.Parse<Priority>(wedgePriority),
                            }
                        ),
                ],
            }
        )
            .With(Stream("s1", "desk/transmit/1-4", "right/receive/1-4"), Stream("s2", "desk/transmit/5-8", "left/receive/1-4"))
            .With(
                Route("desk/aux/1-4", "desk/transmit/1-4"),
                Route("desk/main/1", "desk/transmit/5"),
                Route("right/receive/1-4", "right/out/1-4"),
                Route("left/receive/1", "left/out/1")
            );
    }

    [Fact]
    public void A_main_takes_a_free_output_of_the_console_before_it_takes_anybodys_place()
    {
        var show = Club("Normal", Cable("right/out/1", "amp/in/2"));
        var plan = Loss(Ask(show), "left").Plan!;

        Assert.Equal(["main/1: left/out/1 to desk/out/2"], plan.Recovered.Select(recovered => $"{recovered.Demand}: {recovered.From} to {recovered.To}"));
        Assert.True(plan.Displaced.IsEmpty);
        Assert.Equal("desk/main/1", Carried(plan.Apply(show), "amp/in/1"));
    }

    [Fact]
    public void Where_nothing_is_free_a_main_takes_the_place_of_a_wedge_and_the_plan_says_so()
    {
        var show = Club("Normal");
        var plan = Loss(Ask(show), "left").Plan!;

        Assert.Equal(["wedge-4/1 at right/out/4 for main/1"], plan.Displaced.Select(displaced => $"{displaced.Demand} at {displaced.At} for {displaced.By}"));
        Assert.Equal((FallbackStepKind.Pull, "wedge-4/1"), (plan.Steps[0].Kind, plan.Steps[0].Demand));
        Assert.Equal(["main/1"], plan.Recovered.Select(recovered => recovered.Demand));
        Assert.Equal(("desk/main/1", "desk/aux/3"), (Carried(plan.Apply(show), "amp/in/1"), Carried(plan.Apply(show), "right/out/3")));
        Assert.Contains(
            "wedge-4 right/out/4 main, which matters more monitor",
            System.Text.RegularExpressions.Regex.Replace(ImpactReport.Text(Ask(show), show), @"\s+", " "),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void The_cable_of_what_gives_up_its_place_is_pulled()
    {
        var show = Club("Low");
        show = show with { Rig = show.Rig with { Cables = show.Rig.Cables.Append(Cable("right/out/3-4", "amp/in/3-4")).ToValueList() } };
        var plan = Loss(Ask(show), "left").Plan!;
        var after = plan.Apply(show);

        Assert.Equal(["amp/in/4"], plan.Steps[0].CableTo.Select(point => point.ToString()));
        Assert.Equal(
            ["right/out/3 to amp/in/3", "right/out/4 to amp/in/1"],
            after.Rig.Cables.Where(cable => cable.From.Device.Value == "right").Select(cable => $"{cable.From} to {cable.To}")
        );
        Assert.Equal("desk/main/1", Carried(after, "amp/in/1"));
    }

    [Fact]
    public void Nothing_of_the_same_priority_gives_way_and_the_reason_is_true()
    {
        var plan = Loss(Ask(Club("Critical")), "left").Plan!;

        Assert.True(plan.Displaced.IsEmpty && plan.Recovered.IsEmpty);
        Assert.Equal(
            "Its places are gone, and right and desk have no output free for it, nor one that something less important could give up.",
            Assert.Single(plan.Unrecovered).Reason
        );
    }
}
