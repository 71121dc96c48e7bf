using RoutingRules.Assignment;
using RoutingRules.Model;
using RoutingRules.Testing;

namespace RoutingRules.Tests.Assignment;

/// <summary>Wishes that cannot come true are named, and everything else is placed.</summary>
public sealed class BadWishesTests
{
    private static readonly RoutingEngine Engine = RoutingEngine.CreateBuilder().Build();

    private static Show With(params Feed[] feeds)
    {
        var show = SmallShow.Of(("desk", SmallProfiles.Console), ("box", SmallProfiles.Box));
        return show with
        {
            Rig = show.Rig with { Zones = [new Zone { Id = new("balcony") }] },
            Feeds = [.. feeds, SmallShow.FeedTo("good", FeedRole.Utility, "desk/aux/8", "box")],
        };
    }

    [Fact]
    public void A_zone_without_devices_is_told()
    {
        var lost = SmallShow.FeedTo("lost", FeedRole.Utility, "desk/aux/1") with { To = [new Destination { Zones = [new("balcony")] }] };

        var result = Engine.Assign(With(lost), new AssignmentOptions());

        Assert.Equal(["good/1"], result.Placements.Select(placement => placement.Demand));
        Assert.Equal("lost/1", Assert.Single(result.Unplaced).Demand);
        Assert.Contains("None of the devices or zones it names has a line output", result.Unplaced[0].Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void Contradictory_pins_are_told_as_a_set_and_the_rest_is_placed()
    {
        var result = Engine.Assign(
            With(SmallShow.Feed("one", FeedRole.Utility, "desk/aux/1", "box/out/1"), SmallShow.Feed("two", FeedRole.Utility, "desk/aux/2", "box/out/1")),
            new AssignmentOptions()
        );

        Assert.Equal(AssignmentStatus.PinsContradict, result.Status);
        Assert.Null(result.Objective);
        Assert.Equal(["one/1", "two/1"], Assert.Single(result.Contradictions));
        Assert.Contains("good/1", result.Placements.Select(placement => placement.Demand));
    }

    [Fact]
    public void A_pair_for_which_no_two_outputs_are_left_together_is_told_and_the_singles_are_placed()
    {
        // Pins on 1, 3, 5 and 7 leave four outputs and no pair.
        var pins = Enumerable.Range(1, 4).Select(i => SmallShow.Feed($"pin-{i}", FeedRole.Utility, $"desk/aux/{i}", $"box/out/{(2 * i) - 1}")).ToArray();
        var pair = SmallShow.FeedTo("pair", FeedRole.Utility, "desk/aux/5-6", "box");

        var result = Engine.Assign(With([pair, .. pins]), new AssignmentOptions());

        Assert.Equal(5, result.Placements.Count);
        Assert.Equal("pair/1", Assert.Single(result.Unplaced).Demand);
        Assert.False(string.IsNullOrWhiteSpace(result.Unplaced[0].Reason));
        Assert.Equal([0, 0, 1, 0], result.Objective!.Values.Take(4));
    }

    [Fact]
    public void Without_any_budget_a_show_is_still_placed_and_no_more_than_counting_gives_is_called_proven()
    {
        var feeds = Enumerable.Range(1, 5).Select(i => SmallShow.FeedTo($"f{i}", FeedRole.Utility, $"desk/aux/{i}", "box")).ToArray();

        var hasty = Engine.Assign(With(feeds), new AssignmentOptions { Budget = 0 });
        var best = Engine.Assign(With(feeds), new AssignmentOptions());

        Assert.Equal(6, hasty.Placements.Count);
        Assert.True(hasty.Objective!.CompareTo(best.Objective!, default) >= 0);
        Assert.Equal(best.Objective!.Values.Take(hasty.ProvenNumbers), hasty.Objective.Values.Take(hasty.ProvenNumbers));
    }

    [Fact]
    public void Of_feeds_that_compete_the_more_important_one_is_placed()
    {
        var show = With(
            SmallShow.FeedTo("low", FeedRole.Utility, "desk/aux/1", "box") with
            {
                Priority = Priority.Low,
            },
            SmallShow.FeedTo("critical", FeedRole.Utility, "desk/aux/2", "box") with
            {
                Priority = Priority.Critical,
            }
        );
        show = show with { Rig = show.Rig with { Unavailable = [new UnavailablePoints { At = PointRange.Parse("box/out/3-8") }] } };

        var result = Engine.Assign(show, new AssignmentOptions());

        Assert.Equal("low/1", Assert.Single(result.Unplaced).Demand);
        Assert.Equal("0 0 0 1", string.Join(' ', result.Objective!.Values.Take(4)));
    }
}
