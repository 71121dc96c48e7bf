using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using RoutingRules.Assignment;
using RoutingRules.Assignment.Explaining;
using RoutingRules.Model;
using RoutingRules.Resolving;
using RoutingRules.Testing;

namespace RoutingRules.Tests.Assignment.Explaining;

/// <summary>
/// What an answer to why says would follow without a place, checked against the oracle that tries everything with the demand at each other place.
/// </summary>
public sealed class WhyPromises
{
    private const int Cases = 30;
    private const int Tiers = 4;

    private static readonly RoutingEngine Engine = RoutingEngine.CreateBuilder().Build();

    [Property(MaxTest = Cases)]
    public Property What_would_follow_and_the_second_best_are_true() =>
        Prop.ForAll(
            TinyInstances.Arbitrary,
            tiny =>
            {
                var problem = Problem(tiny);
                return (problem is null).Label($"seed {tiny.Seed}: {problem}");
            }
        );

    /// <summary>
    /// What is said of a place with all else as it is, against an assignment in which every demand has only the one place that this asks for, and what is
    /// said to be unreachable against one in which all others are left out. Without lines at several points: which of them serves a channel is part of what
    /// is, and no assignment can be asked to keep it.
    /// </summary>
    [Fact]
    public void What_is_said_against_single_places_is_true()
    {
        var problems = new List<string>();
        var judged = new Dictionary<RefusalCause, int>();
        for (var seed = 0; seed < 250; seed++)
        {
            var tiny = TinyInstances.Make(seed);
            var result = Engine.Assign(tiny.Show, tiny.Options);
            if (
                result.Status == AssignmentStatus.Optimal
                && result.Unplaced.IsEmpty
                && result.Objective!.Values[Tiers] == 0
                && tiny.Show.Lines.All(line => line.From.At.Count < 2)
            )
            {
                problems.AddRange(result.Placements.Where(place => !place.IsPinned).SelectMany(place => Differing(tiny, result, place, judged)));
            }
        }

        Assert.Equal([], problems);
        Assert.InRange(judged.GetValueOrDefault(RefusalCause.Worse), 50, int.MaxValue);
        Assert.InRange(judged.GetValueOrDefault(RefusalCause.EquallyGood), 1, int.MaxValue);
        Assert.InRange(judged.GetValueOrDefault(RefusalCause.BlockClash), 1, int.MaxValue);
    }

    /// <summary>
    /// Output 1 is the only one left for a, since b may only stand at 1 or 2. The wish of a displaces b in the list's order of priority: a is critical.
    /// </summary>
    [Fact]
    public void A_feed_that_would_displace_another_is_not_said_to_have_no_place()
    {
        var show = SmallShow.Of(("desk", SmallProfiles.Console), ("box", SmallProfiles.Box)) with
        {
            Feeds =
            [
                SmallShow.FeedTo("a", FeedRole.Main, "desk/main/1", "box") with
                {
                    Priority = Priority.Critical,
                    Hold = false,
                },
                SmallShow.FeedTo("b", FeedRole.Monitor, "desk/aux/2", "box"),
            ],
        };
        show = show with { Rig = show.Rig with { Reserved = [new() { At = SmallShow.At("box/out/3-8"), Reason = "guests" }] } };

        var what = Engine.Why(show, new WhyQuestion { Subject = "a", Not = SmallShow.At("box/out/1") }).WhatIf!;

        Assert.Equal(SmallShow.At("box/out/2"), what.At);
        Assert.Equal(["b/1"], what.Moves.Select(move => move.Demand).Concat(what.Lost));
    }

    /// <summary>In-ear mixes are held once they are plugged; here nothing is plugged yet, and the two entries can change places.</summary>
    [Fact]
    public void What_was_only_just_placed_holds_nothing()
    {
        var show = SmallShow.Of(("desk", SmallProfiles.Console), ("box", SmallProfiles.Box)) with
        {
            Feeds =
            [
                SmallShow.FeedTo("ears", FeedRole.InEar, "desk/aux/1", "box") with
                {
                    To = [new() { Devices = [new("box")] }, new() { Devices = [new("box")] }],
                },
            ],
        };
        show = show with { Rig = show.Rig with { Reserved = [new() { At = SmallShow.At("box/out/3-8"), Reason = "guests" }] } };

        var what = Engine.Why(show, new WhyQuestion { Subject = "ears/1", Not = SmallShow.At("box/out/1") }).WhatIf!;

        Assert.Equal(SmallShow.At("box/out/2"), what.At);
        Assert.Equal(
            [
                new()
                {
                    Demand = "ears/2",
                    From = SmallShow.At("box/out/2"),
                    To = SmallShow.At("box/out/1"),
                },
            ],
            what.Moves
        );
        Assert.Empty(what.Lost);
    }

    private static string? Problem(TinyInstance tiny)
    {
        var (show, options) = (tiny.Show, tiny.Options);
        var result = Engine.Assign(show, options);
        if (result.Status != AssignmentStatus.Optimal || result.Objective!.Values[Tiers] > 0 || options.Spares > 0)
        {
            return null;
        }

        var resolved = Engine.Resolve(result.Show);
        foreach (var place in result.Placements.Where(place => !place.IsPinned))
        {
            var node = resolved.Demands.First(demand => demand.Key == place.Demand);
            var answer = Engine.Why(show, new WhyQuestion { Subject = place.Demand, Not = place.At }, options);
            if ((About(answer.Decisions.Single(), tiny, result) ?? Else(answer.WhatIf!, node, place.At, tiny, result)) is { } problem)
            {
                return $"{place.Demand} at {place.At}: {problem}";
            }
        }

        return null;
    }

    private static IEnumerable<string> Differing(TinyInstance tiny, AssignmentResult result, Placement place, Dictionary<RefusalCause, int> judged)
    {
        var show = Engine.Resolve(tiny.Show);
        var node = show.Demands.First(demand => demand.Key == place.Demand);
        var refusals = Engine.Why(tiny.Show, new WhyQuestion { Subject = place.Demand }, tiny.Options).Decisions.Single().Refusals;
        foreach (
            var refusal in refusals.Where(refusal =>
                refusal.Cause is RefusalCause.NoPath or RefusalCause.BlockClash or RefusalCause.StreamLimit or RefusalCause.Worse or RefusalCause.EquallyGood
            )
        )
        {
            var difference = refusal.Difference;
            var least = int.MaxValue;
            foreach (var at in Runs(node, refusal.Points))
            {
                judged[refusal.Cause] = judged.GetValueOrDefault(refusal.Cause) + 1;
                var isAlone = refusal.Cause == RefusalCause.NoPath;
                var places = result
                    .Placements.Select(other => other.Demand == place.Demand ? other with { At = at } : other)
                    .Where(other => !isAlone || other.Demand == place.Demand)
                    .ToList();
                var then = Engine.Assign(
                    tiny.Show,
                    tiny.Options with
                    {
                        Avoid = show.Demands.SelectMany(demand => Others(show, demand, places)).ToValueList(),
                        LeaveOut = isAlone ? show.Demands.Where(demand => demand != node).Select(demand => demand.Key).ToValueList() : [],
                    }
                );
                var isPossible = then.Placements.Any(other => other.Demand == place.Demand && other.At == at) && (isAlone || then.Unplaced.IsEmpty);
                var between = isPossible && !isAlone ? ObjectiveDifference.Between(result.Objective!, then.Objective!, tiny.Options.Order) : null;
                least = Math.Min(least, between?.By ?? int.MaxValue);
                if (isPossible != refusal.Cause is RefusalCause.Worse or RefusalCause.EquallyGood || between?.Number != difference?.Number)
                {
                    yield return $"seed {tiny.Seed}: {place.Demand} at {place.At}, {at} is said to be {refusal.Cause} {difference}, and is {isPossible} "
                        + $"{between}";
                }
            }

            if (difference is not null && least != difference.By)
            {
                yield return $"seed {tiny.Seed}: {place.Demand} at {place.At}, {refusal.Points} are said to be worse by {difference.By}, and are by {least}";
            }
        }
    }

    /// <summary>Every place that a demand might have but the one it shall have.</summary>
    private static IEnumerable<Placement> Others(ResolvedShow show, DemandNode node, List<Placement> places) =>
        node.IsPinned || places.Find(place => place.Demand == node.Key) is not { } wanted
            ? []
            : node
                .Allowed.ToArray()
                .Select(run => new Placement { Demand = node.Key, At = show.Graph.Address(run, node.Width) })
                .Where(place => place.At != wanted.At);

    /// <summary>The second best is no better than the best; a hold is kept whatever it costs others, so that giving it up may be better.</summary>
    private static string? About(WhyDecision decision, TinyInstance tiny, AssignmentResult result) =>
        decision is { Basis: not DecisionBasis.Held, RunnerUp: { IsProven: true } second }
        && second.Objective.CompareTo(result.Objective!, tiny.Options.Order) < 0
            ? "the second best is better than the best"
            : null;

    /// <summary>Where it would go, or that it would have no place: no assignment with the demand elsewhere leaves less without a place.</summary>
    private static string? Else(WhatIf what, DemandNode node, PointRange now, TinyInstance tiny, AssignmentResult result)
    {
        var feeds = tiny
            .Show.Feeds.SelectMany(feed => Enumerable.Range(1, feed.To.Count).Select(entry => ($"{feed.Id}/{entry}", (int)feed.Priority)))
            .ToDictionary();
        var gained = what.Moves.Where(move => move.From is null).Select(move => move.Demand).ToHashSet();
        var lost = what
            .Lost.Concat(result.Unplaced.Select(entry => entry.Demand).Where(key => !gained.Contains(key)))
            .Concat(what.At is null ? [node.Key] : [])
            .ToList();
        if (!what.IsProven || !lost.TrueForAll(feeds.ContainsKey))
        {
            return null;
        }

        var isHeld = Engine.Resolve(tiny.Show).Demands.First(demand => demand.Key == node.Key).IsHeld;
        var claimed = new int[Tiers];
        foreach (var key in lost)
        {
            claimed[feeds[key]]++;
        }

        // A pin takes the place of one that is held, which the demand by itself cannot.
        var held = Engine.Resolve(tiny.Show).Demands.Where(demand => demand.IsHeld && demand.Key != node.Key).Select(demand => demand.Key).ToHashSet();
        var stuck = result.Placements.Where(place => held.Contains(place.Demand)).Select(place => place.At).ToList();
        foreach (
            var at in Runs(node, PointsOf(node, tiny, result))
                .Where(at =>
                    at != now
                    && !stuck.Exists(other => other.Device == at.Device && other.Group == at.Group && other.First <= at.Last && at.First <= other.Last)
                )
        )
        {
            var other = BruteForce.Solve(Pinned(tiny.Show, node.Key, at), tiny.Options);
            if (other.Vector is { } vector && vector.Values[Tiers] <= (isHeld ? 1 : 0) && Compare(vector.Values.Take(Tiers), claimed) < 0)
            {
                return $"what would follow leaves {string.Join(' ', claimed)} without a place, and {at} only {string.Join(' ', vector.Values.Take(Tiers))}";
            }

            if (at == what.At && (other.Vector is null || Compare(other.Vector.Values.Take(Tiers), claimed) != 0))
            {
                return $"{at} is where it would go, with {string.Join(' ', claimed)} left out, and that is not so";
            }
        }

        return null;
    }

    private static int Compare(IEnumerable<int> one, IEnumerable<int> other) =>
        one.Zip(other, (first, second) => first.CompareTo(second)).FirstOrDefault(sign => sign != 0);

    /// <summary>Free of marks and of exclusions, which a pin would override.</summary>
    private static IEnumerable<PointRange> PointsOf(DemandNode node, TinyInstance tiny, AssignmentResult result)
    {
        var resolved = Engine.Resolve(result.Show);
        foreach (var run in node.Allowed.ToArray())
        {
            var at = resolved.Graph.Address(run, node.Width);
            var isFree = Enumerable.Range(0, node.Width).All(position => resolved.MarkOf(run + position) is null);
            if (
                isFree
                && !tiny.Options.Without.Any(text =>
                    text == at.Device.Value || at.ToString().StartsWith(text + "/", StringComparison.Ordinal) || at[0].ToString() == text
                )
            )
            {
                yield return at;
            }
        }
    }

    /// <summary>Runs as wide as a demand in joined ranges.</summary>
    private static IEnumerable<PointRange> Runs(DemandNode node, IEnumerable<PointRange> ranges) =>
        ranges.SelectMany(range =>
            Enumerable
                .Range(0, range.Width / node.Width)
                .Select(run => new PointRange(range.Device, range.Group, range.First + (run * node.Width), range.First + (run * node.Width) + node.Width - 1))
        );

    private static Show Pinned(Show show, string key, PointRange at)
    {
        var resolved = Engine.Resolve(show);
        var node = resolved.Demands.First(demand => demand.Key == key);
        return node.IsPinned ? show : ShowChanges.Pin(show, node, at);
    }
}
