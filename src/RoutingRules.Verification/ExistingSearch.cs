using System.Numerics;
using RoutingRules.Model;

namespace RoutingRules.Verification;

/// <summary>Finds which demands the input already serves, and where.</summary>
/// <remarks>
/// The choice is written as one number to be made as large as possible. Its digits, most weighty first: how many demands are served; how many of
/// them on usable points that are not behind a cable; which demands, earlier ones first; how far forward each stands among its own runs.
/// </remarks>
internal sealed class ExistingSearch
{
    private readonly List<DemandFacts> demands;
    private readonly ExistingNeighbours neighbours;
    private readonly List<List<(PointRange Run, BigInteger Weight)>> options = [];

    private ExistingSearch(List<DemandFacts> demands, ExistingNeighbours neighbours)
    {
        this.demands = demands;
        this.neighbours = neighbours;
    }

    /// <summary>Sets <see cref="DemandFacts.Existing"/> and <see cref="DemandFacts.IsHeld"/> of every demand.</summary>
    public static void Run(List<DemandFacts> demands, RigFacts rig, PatchTrace input)
    {
        var neighbours = new ExistingNeighbours(demands, rig, input);
        var found = demands.ToDictionary(
            demand => demand,
            demand => Candidates(demand, rig, input).Where(run => demand.IsPinned || !neighbours.IsNamed(run)).ToList()
        );
        foreach (var component in Components(demands, found, neighbours))
        {
            var search = new ExistingSearch(component, neighbours);
            search.Weigh(rig, found, input);
            search.Solve();
        }

        foreach (var demand in demands)
            demand.IsHeld = demand.Existing is { } at && Holds(demand) && !IsFactoryOnly(demand, at, input);
    }

    private static bool Holds(DemandFacts demand) =>
        demand.Line is { } line ? line.Hold ?? false : demand.Feed!.Hold ?? (demand.Feed.Role == FeedRole.Main || demand.Feed.Role == FeedRole.InEar);

    // Runs in order of preference: usable ones first; then position for feeds, and for lines how many deliveries use the run.
    private static List<PointRange> Candidates(DemandFacts demand, RigFacts rig, PatchTrace input)
    {
        if (demand.Line is not { } line)
        {
            var feed = demand.Feed!;
            return input
                .CarriersOf(feed.Source[0])
                .Select(point => demand.Runs.At(point) ?? demand.EvenRuns.At(point))
                .OfType<PointRange>()
                .Where(run => input.Carries(run, feed.Source))
                .OrderByDescending(run => IsUsable(rig, run) && !ComesByCable(demand, run, input))
                .ThenByDescending(run => IsRouted(run, feed.Source, input))
                .ToList();
        }

        if (demand.IsSplit)
            return demand.Runs.Any(run => line.To.Any(sink => input.Carries(sink, run))) ? [demand.Runs[0]] : [];

        return line
            .To.Where(sink => rig.Exists(sink))
            .SelectMany(sink => input.Follow(sink[0]).Points)
            .Distinct()
            .Select(point => demand.Runs.At(point) ?? demand.EvenRuns.At(point))
            .OfType<PointRange>()
            .Select(run => (Run: run, Uses: demand.Sinks.Count(sink => input.Carries(sink, run))))
            .Where(pair => pair.Uses > 0)
            .OrderByDescending(pair => IsUsable(rig, pair.Run))
            .ThenByDescending(pair => pair.Uses)
            .ThenBy(pair => pair.Run.First)
            .ThenBy(pair => pair.Run[0], Comparer<Point>.Create(rig.Compare))
            .Select(pair => pair.Run)
            .ToList();
    }

    // Somebody wrote a route on the way to every point of the run.
    private static bool IsRouted(PointRange run, PointRange source, PatchTrace input) =>
        Enumerable
            .Range(0, run.Width)
            .All(i =>
            {
                var chain = input.Follow(run[i]);
                return chain.Steps.Take(chain.IndexOf(source[i])).Any(step => step.Kind == StepKind.Route);
            });

    // A feed never gets anywhere by a cable: what lies behind a place is nobody's own.
    private static bool ComesByCable(DemandFacts demand, PointRange run, PatchTrace input) =>
        demand.Feed is { } feed
        && Enumerable
            .Range(0, run.Width)
            .Any(i =>
            {
                var chain = input.Follow(run[i]);
                return chain.Steps.Take(chain.IndexOf(feed.Source[i])).Any(step => step.Kind == StepKind.Cable);
            });

    private static bool IsUsable(RigFacts rig, PointRange run) => Enumerable.Range(0, run.Width).All(i => IsUsable(rig, run[i]));

    private static bool IsUsable(RigFacts rig, Point point) => rig.IsUsable(point) && !rig.IsExcluded(point);

    private static bool IsFactoryOnly(DemandFacts demand, PointRange at, PatchTrace input)
    {
        if (demand.Line is not { } line)
            return Enumerable.Range(0, at.Width).All(i => IsBuiltIn(input, at[i], demand.Feed!.Source[i]));

        IReadOnlyList<PointRange> runs = demand.IsSplit ? demand.Runs : [at];
        return runs.All(run => line.To.All(sink => !input.Carries(sink, run) || Enumerable.Range(0, sink.Width).All(i => IsBuiltIn(input, sink[i], run[i]))));
    }

    private static bool IsBuiltIn(PatchTrace input, Point sink, Point source)
    {
        var chain = input.Follow(sink);
        return chain.Steps.Take(chain.IndexOf(source)).All(step => step.Kind is not (StepKind.Route or StepKind.Stream));
    }

    // Demands that share no point with each other, and need not stay apart, are chosen one by one.
    private static List<List<DemandFacts>> Components(List<DemandFacts> demands, Dictionary<DemandFacts, List<PointRange>> found, ExistingNeighbours neighbours)
    {
        var parent = Enumerable.Range(0, demands.Count).ToArray();
        var owner = new Dictionary<Point, int>();
        int Root(int i) => parent[i] == i ? i : parent[i] = Root(parent[i]);
        foreach (var demand in demands)
        {
            foreach (var point in found[demand].SelectMany(demand.Occupies))
            {
                if (!owner.TryAdd(point, demand.Index))
                    parent[Root(demand.Index)] = Root(owner[point]);
            }
        }

        foreach (var (one, other) in neighbours.Pairs.Where(pair => found[pair.One].Count > 0 && found[pair.Other].Count > 0))
            parent[Root(one.Index)] = Root(other.Index);

        return demands.Where(demand => found[demand].Count > 0).GroupBy(demand => Root(demand.Index)).Select(group => group.ToList()).ToList();
    }

    private void Weigh(RigFacts rig, Dictionary<DemandFacts, List<PointRange>> found, PatchTrace input)
    {
        var most = demands.Max(demand => found[demand].Count) + 1;
        var ranks = BigInteger.Pow(most, demands.Count);
        var perUsable = ranks << demands.Count;
        var perDemand = perUsable * (demands.Count + 1);
        for (var i = 0; i < demands.Count; i++)
        {
            var runs = found[demands[i]];
            var served = perDemand + (ranks << (demands.Count - 1 - i));
            var step = BigInteger.Pow(most, demands.Count - 1 - i);
            options.Add(
                runs.Select(
                        (run, rank) =>
                            (
                                run,
                                served
                                    + ((most - 1 - rank) * step)
                                    + (demands[i].Occupies(run).All(point => IsUsable(rig, point)) && !ComesByCable(demands[i], run, input) ? perUsable : 0)
                            )
                    )
                    .ToList()
            );
        }
    }

    private void Solve()
    {
        var taken = new HashSet<Point>();
        var bound = new BigInteger[demands.Count + 1];
        for (var i = demands.Count - 1; i >= 0; i--)
            bound[i] = bound[i + 1] + options[i].Max(option => option.Weight);

        var chosen = new PointRange?[demands.Count];
        var best = new PointRange?[demands.Count];
        var bestWeight = BigInteger.MinusOne;
        if (!TrySlots(best))
            Search(0, BigInteger.Zero);

        for (var i = 0; i < demands.Count; i++)
            demands[i].Existing = best[i];

        void Search(int i, BigInteger weight)
        {
            if (weight + bound[i] <= bestWeight)
                return;

            if (i == demands.Count)
            {
                bestWeight = weight;
                chosen.CopyTo(best, 0);
                return;
            }

            foreach (var (run, gain) in options[i])
            {
                var points = demands[i].Occupies(run).ToList();
                if (points.Any(taken.Contains) || Enumerable.Range(0, i).Any(j => chosen[j] is { } at && neighbours.Clash(demands[i], run, demands[j], at)))
                    continue;

                taken.UnionWith(points);
                chosen[i] = run;
                Search(i + 1, weight + gain);
                chosen[i] = null;
                taken.ExceptWith(points);
            }

            Search(i + 1, weight);
        }
    }

    // When any two runs are the same or have no point in common, the runs are slots and the choice is a matching.
    private bool TrySlots(PointRange?[] best)
    {
        var slots = new Dictionary<Point, int>();
        var slotOf = new Dictionary<PointRange, int>();
        for (var i = 0; i < demands.Count; i++)
        {
            foreach (var (run, _) in options[i])
            {
                if (demands[i].IsSplit || neighbours.HasAny(demands[i]))
                    return false;

                if (slotOf.ContainsKey(run))
                    continue;

                slotOf.Add(run, slotOf.Count);
                if (demands[i].Occupies(run).Any(point => !slots.TryAdd(point, 0)))
                    return false;
            }
        }

        var weights = options.Select(runs => runs.ToDictionary(option => slotOf[option.Run], option => option.Weight)).ToList();
        var match = WeightedMatching.Solve(weights, slotOf.Count);
        for (var i = 0; i < demands.Count; i++)
            best[i] = match[i] < 0 ? null : slotOf.First(pair => pair.Value == match[i]).Key;

        return true;
    }
}
