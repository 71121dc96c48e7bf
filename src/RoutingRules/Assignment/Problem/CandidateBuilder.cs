using RoutingRules.Profiles;
using RoutingRules.Resolving;
using RoutingRules.Signal.Existing;

namespace RoutingRules.Assignment.Problem;

/// <summary>Finds the ways to place each demand that could work on their own.</summary>
internal sealed class CandidateBuilder(AssignmentProblem problem, CancellationToken cancellation)
{
    private const int MaxCombinations = 256;

    /// <summary>Sinks that the line in hand reaches too late from somewhere.</summary>
    private readonly SortedSet<int> lateSinks = [];

    private readonly SignalGraph graph = problem.Show.Graph;
    private readonly DeliveryFinder finder = new(problem);
    private readonly PathLatency latency = new(problem);
    private readonly Wishes wishes = new(problem.Show, problem.Options);
    private readonly Dictionary<string, int> sets = new(StringComparer.Ordinal);
    private readonly Dictionary<string, int> parts = new(StringComparer.Ordinal);
    private readonly Dictionary<string, int> groups = new(StringComparer.Ordinal);

    public void Fill(Demand[] demands)
    {
        foreach (var node in problem.Show.Demands)
        {
            demands[node.Index] = node.Feed is { } feed ? OfFeed(node, feed) : OfLine(node, node.Line!);
        }

        AddSeparations(demands);
    }

    private Demand OfFeed(DemandNode node, FeedNode feed)
    {
        var candidates = new List<Candidate>();
        var late = new List<int>();
        foreach (var run in Runs(node))
        {
            if (
                !feed.Source.IsNone
                && IsUsable(node, run)
                && (
                    (run == node.Existing ? finder.AsIs(feed.Source.Value, run.Value, node.Width) : null) ?? finder.Of(feed.Source.Value, run.Value, node.Width)
                )
                    is { } delivery
            )
            {
                if (latency.IsInTime(node, delivery))
                {
                    candidates.Add(Make(node, run, [delivery], 0, Points(run, node.Width)));
                }
                else
                {
                    late.Add(run.Value);
                }
            }
        }

        return new Demand
        {
            Node = node,
            Tier = (int)feed.Model.Priority,
            Weight = 1,
            IsPinned =
                node.IsPinned
                && node.Allowed.Count > 0
                && !feed.Source.IsNone
                && !finder.IsExcluded(node.Allowed[0], node.Width)
                && IsWanted(node, node.Allowed[0]),
            Candidates = [.. candidates],
            Late = [.. late],
            Preferred = feed.Model.Preferred ?? 0,
            Set = feed.Model.Set is { } set ? Number(sets, set) : -1,
            Part = Number(parts, feed.Model.Part ?? ""),
            Group = feed.Model.Group is { } group ? Number(groups, "f" + group) : -1,
        };
    }

    private Demand OfLine(DemandNode node, LineNode line)
    {
        var candidates = new List<Candidate>();
        lateSinks.Clear();
        if (node.IsPinned && !line.Model.From.At.IsEmpty)
        {
            var points = node.Allowed.Where(run => IsUsable(node, run)).ToArray();
            if (points.Length > 0)
            {
                AddLineCandidates(node, line, node.Allowed[0], points, candidates);
            }
        }
        else
        {
            foreach (var run in Runs(node))
            {
                if (IsUsable(node, run))
                {
                    AddLineCandidates(node, line, run, [run], candidates);
                }
            }
        }

        return new Demand
        {
            Node = node,
            Tier = (int)line.Model.Priority,
            Weight = line.Model.To.Distinct().Count(),
            IsPinned = false,
            Candidates = [.. candidates],
            Late = [.. lateSinks.Where(sink => !candidates.Exists(candidate => Array.Exists(candidate.Deliveries, delivery => delivery.Sink == sink)))],
            Preferred = line.Model.Preferred ?? 0,
            Set = -1,
            Part = -1,
            Group = line.Model.Group is { } group ? Number(groups, "l" + group) : -1,
        };
    }

    private IEnumerable<PointIndex> Runs(DemandNode node)
    {
        if (cancellation.IsCancellationRequested)
        {
            problem.IsCut = true;
            return node.IsPinned ? node.Allowed
                : node.Existing.IsNone ? []
                : [node.Existing];
        }

        var isExtra = !node.Existing.IsNone && !node.Allowed.Contains(node.Existing);
        return isExtra ? node.Allowed.Append(node.Existing).Order() : node.Allowed;
    }

    private bool IsWanted(DemandNode node, PointIndex run) => !wishes.IsLeftOut(node) && !wishes.IsAvoided(node, run);

    private bool IsUsable(DemandNode node, PointIndex run)
    {
        if (!IsWanted(node, run))
        {
            return false;
        }

        for (var position = 0; position < node.Width; position++)
        {
            var point = run.Value + position;
            if (problem.IsExcludedPoint[point] || (!node.IsPinned && (problem.IsBarred[point] || (Exposure.IsPrivate(node) && problem.Exposure.Leads(point)))))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>For every choice of where each sink takes the line from, or that it goes without, one candidate; fewest failures first.</summary>
    private void AddLineCandidates(DemandNode node, LineNode line, PointIndex first, PointIndex[] points, List<Candidate> candidates)
    {
        var carriers = finder.Carriers(points, node.Width);
        var sinks = line.Sinks.Where((_, entry) => !line.IsRepeated(entry)).ToArray();
        var choices = new List<Delivery?>[sinks.Length];
        for (var sink = 0; sink < choices.Length; sink++)
        {
            choices[sink] = [];
            foreach (var carrier in carriers)
            {
                if (!sinks[sink].IsNone && finder.Of(carrier, sinks[sink].Value, node.Width) is { } delivery && IsInTime(node, delivery))
                {
                    choices[sink].Add(delivery);
                }
            }

            if (
                !sinks[sink].IsNone
                && first == node.Existing
                && finder.AsIs(first.Value, sinks[sink].Value, node.Width) is { } asIs
                && !choices[sink].Contains(asIs)
                && IsInTime(node, asIs)
            )
            {
                choices[sink].Insert(0, asIs);
            }

            // A leg in use stays in use.
            var inUse = choices[sink].FindIndex(choice => !sinks[sink].IsNone && ExistingPlacements.IsFedBy(graph, sinks[sink].Value, choice!.Value.Source));
            if (inUse > 0)
            {
                choices[sink].Insert(0, choices[sink][inUse]);
                choices[sink].RemoveAt(inUse + 1);
            }

            choices[sink].Add(null);
        }

        var found = new List<Candidate>();
        var current = new Delivery?[choices.Length];
        Choose(0);
        candidates.AddRange(found.OrderBy(candidate => candidate.Failed));

        void Choose(int sink)
        {
            if (found.Count >= MaxCombinations)
            {
                return;
            }

            if (sink < choices.Length)
            {
                foreach (var choice in choices[sink])
                {
                    current[sink] = choice;
                    Choose(sink + 1);
                }

                return;
            }

            var deliveries = current.Where(delivery => delivery is not null).Select(delivery => delivery!.Value).ToArray();
            if (deliveries.Length > 0)
            {
                // A line that is split before the boxes is plugged at all its points; the patch uses those it may.
                var plugged = node.IsPinned ? (IEnumerable<PointIndex>)node.Allowed : points;
                var claims = plugged.SelectMany(run => Points(run, node.Width)).ToList();
                foreach (var delivery in deliveries)
                {
                    claims.AddRange(Points(new PointIndex(delivery.Sink), node.Width));
                }

                found.Add(Make(node, first, deliveries, choices.Length - deliveries.Length, [.. claims]));
            }
        }
    }

    private bool IsInTime(DemandNode node, Delivery delivery)
    {
        var isInTime = latency.IsInTime(node, delivery);
        if (!isInTime)
        {
            lateSinks.Add(delivery.Sink);
        }

        return isInTime;
    }

    private Candidate Make(DemandNode node, PointIndex run, Delivery[] deliveries, int failed, int[] claims)
    {
        var isExisting = node.Existing == run;
        var group = graph.GroupOf(run);
        return new Candidate
        {
            First = run.Value,
            Device = graph.DeviceOf(run).Index,
            PortGroup = problem.PortGroupOf[run.Value],
            Number = graph.NumberOf(run),
            IsExisting = isExisting,
            AsksForSpares = group.Kind == PortKind.Output && !isExisting && !node.IsPinned,
            Claims = claims,
            Deliveries = deliveries,
            Failed = failed,
        };
    }

    private void AddSeparations(Demand[] demands)
    {
        var apart = Apartness.Of(problem.Show);
        for (var i = 0; apart is not null && i < demands.Length; i++)
        {
            foreach (var (other, by) in apart.Of(i))
            {
                demands[i].Separations.Add(new Separate(other, by));
            }
        }
    }

    private static int[] Points(PointIndex run, int width) => width == 1 ? [run.Value] : [run.Value, run.Value + 1];

    private static int Number(Dictionary<string, int> names, string name)
    {
        if (!names.TryGetValue(name, out var number))
        {
            number = names.Count;
            names.Add(name, number);
        }

        return number;
    }
}
