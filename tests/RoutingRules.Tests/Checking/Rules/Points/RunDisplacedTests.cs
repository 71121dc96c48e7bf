using RoutingRules.Checking.Rules.Feeds;
using RoutingRules.Checking.Rules.Lines;
using RoutingRules.Checking.Rules.Points;
using RoutingRules.Model;
using RoutingRules.Rules;
using RoutingRules.Testing;
using RoutingRules.Tests.Checking.Rules.Lines;
using RoutingRules.Tests.Checking.Rules.Networks;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Checking.Rules.Points;

public sealed class RunDisplacedTests
{
    private static readonly RunDisplaced Rule = new();

    private static readonly Rule[] Others =
    [
        new FeedNotDelivered(),
        new FeedDeliveredElsewhere(),
        new FanOutLost(),
        new OutputStray(),
        new PairSplit(),
        new PairSwapped(),
    ];

    /// <summary>Aux n is wanted at output n of a free box; the routes of the box put what arrives a number of outputs beside it.</summary>
    private static Show Shifted(int count, int shift, params Feed[] more)
    {
        var show = Of(("desk", SmallProfiles.Console), ("box", SmallProfiles.FreeBox))
            .With(Stream("a", "desk/transmit/1-4", "box/receive/1-4"), Stream("b", "desk/transmit/5-8", "box/receive/5-8"));
        return show with
        {
            Feeds = [.. Enumerable.Range(2, count).Select(number => Feed($"f{number}", FeedRole.Monitor, $"desk/aux/{number}", $"box/out/{number}")), .. more],
            Patch = show.Patch with
            {
                Routes =
                [
                    Route($"desk/aux/2-{count + 1}", $"desk/transmit/2-{count + 1}"),
                    Route($"box/receive/2-{count + 1}", $"box/out/{2 + shift}-{count + 1 + shift}"),
                    Route(null, "desk/transmit/1"),
                    Route(null, "desk/out/1-2"),
                ],
            },
        };
    }

    [Fact]
    public void A_run_one_output_too_high_is_one_finding_and_no_other_rule_speaks()
    {
        var show = Shifted(5, 1);

        Expect.One(
            Rule,
            show,
            Severity.Error,
            "/feeds/0/to/0",
            "What belongs at box/out/2-6 arrives at box/out/3-7, 1 place too high: 5 feeds, 'f2', 'f3', 'f4', 'f5' and 'f6'.",
            "wanted=box/out/2-6",
            "actual=box/out/3-7",
            "feed=f2",
            "feed=f3",
            "feed=f4",
            "feed=f5",
            "feed=f6"
        );
        Assert.All(Others, rule => Expect.None(rule, show));
    }

    [Fact]
    public void A_run_one_output_too_low_is_found_as_well() =>
        Assert.StartsWith(
            "What belongs at box/out/2-4 arrives at box/out/1-3, 1 place too low: 3 feeds",
            Assert.Single(RuleTester.Findings(Rule, Shifted(3, -1))).Message,
            StringComparison.Ordinal
        );

    [Fact]
    public void A_fault_that_is_no_part_of_the_run_is_still_told_by_its_own_rule()
    {
        var show = Shifted(4, 1, Feed("alone", FeedRole.Monitor, "desk/aux/8", "desk/out/1"));

        Assert.Single(RuleTester.Findings(Rule, show));
        Assert.Equal(
            "feed=alone",
            Assert.Single(RuleTester.Findings(new FeedNotDelivered(), show)).Entities.Select(entity => $"{entity.Role}={entity.Id}").Single()
        );
    }

    [Fact]
    public void Two_feeds_may_stand_beside_their_places_for_reasons_of_their_own()
    {
        Expect.None(Rule, Shifted(2, 1));
        Assert.Equal(
            ["f2", "f3"],
            RuleTester.Findings(new FeedNotDelivered(), Shifted(2, 1)).SelectMany(finding => finding.Entities).Select(entity => entity.Id)
        );
    }

    [Fact]
    public void A_run_in_place_is_no_finding() => Expect.None(Rule, Shifted(5, 0));

    [Fact]
    public void Lines_that_all_arrive_two_channels_too_high_are_one_finding()
    {
        var show = LineRig
            .Show([.. Enumerable.Range(1, 4).Select(number => Line($"l{number}", $"box/in/{number}", $"desk/channel/{number}"))])
            .With(Route("desk/receive/1-4", "desk/channel/3-6"), Route(null, "desk/channel/1-2"));

        Expect.One(
            Rule,
            show,
            Severity.Error,
            "/lines/0/to",
            "What belongs at desk/channel/1-4 arrives at desk/channel/3-6, 2 places too high: 4 lines, 'l1', 'l2', 'l3' and 'l4'.",
            "wanted=desk/channel/1-4",
            "actual=desk/channel/3-6",
            "line=l1",
            "line=l2",
            "line=l3",
            "line=l4"
        );
        Expect.None(new LineNotPatched(), show);
    }

    // Feeds 2, 3, 5 and 6 all arrive one output too high and nothing belongs at output 4: two pairs side by side are no run of four.
    [Fact]
    public void What_stands_apart_is_no_run_whatever_it_adds_up_to()
    {
        var show = Shifted(5, 1);
        var apart = show with { Feeds = [.. show.Feeds.Where(feed => feed.Id.Value != "f4")] };

        Expect.None(Rule, apart);
        Assert.Equal(
            ["f2", "f3", "f5", "f6"],
            RuleTester.Findings(new FeedNotDelivered(), apart).SelectMany(finding => finding.Entities).Select(entity => entity.Id)
        );
    }

    // Inputs 1 to 3 and 5 to 7 arrive one channel too high, and channel 4 is nobody's: two runs, each with its own lines.
    [Fact]
    public void Two_runs_of_the_same_shift_are_two_findings()
    {
        var show = LineRig
            .Show([.. new[] { 1, 2, 3, 5, 6, 7 }.Select(number => Line($"l{number}", $"desk/in/{number}", $"desk/channel/{number}"))])
            .WithProfile(
                "desk",
                desk => desk with { PortGroups = desk.PortGroups.Select(group => group.Id.Value == "in" ? group with { Count = 8 } : group).ToValueList() }
            )
            .With(
                Route("desk/in/1-3", "desk/channel/2-4"),
                Route("desk/in/5-7", "desk/channel/6-8"),
                Route(null, "desk/channel/1"),
                Route(null, "desk/channel/5")
            );

        Assert.Equal(
            [
                "What belongs at desk/channel/1-3 arrives at desk/channel/2-4, 1 place too high: 3 lines, 'l1', 'l2' and 'l3'.",
                "What belongs at desk/channel/5-7 arrives at desk/channel/6-8, 1 place too high: 3 lines, 'l5', 'l6' and 'l7'.",
            ],
            RuleTester.Findings(Rule, show).Select(finding => finding.Message).Order(StringComparer.Ordinal)
        );
    }
}
