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
                && ((run == node.Existing ? DeliverAsIs(feed.Source.Value, run.Value, node.Width) : null) ?? Deliver(feed.Source.Value, run.Value, node.Width))
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
                node.IsPinned && node.Allowed.Count > 0 && !feed.Source.IsNone && !IsExcluded(node.Allowed[0], node.Width) && IsWanted(node, node.Allowed[0]),
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

    private bool IsExcluded(PointIndex run, int width)
    {
        var excluded = false;
        for (var position = 0; position < width; position++)
        {
            excluded |= problem.IsExcludedPoint[run.Value + position];
        }

        return excluded;
    }

    /// <summary>For every choice of where each sink takes the line from, or that it goes without, one candidate; fewest failures first.</summary>
    private void AddLineCandidates(DemandNode node, LineNode line, PointIndex first, PointIndex[] points, List<Candidate> candidates)
    {
        var carriers = Carriers(points, node.Width);
        var sinks = line.Sinks.Where((_, entry) => !line.IsRepeated(entry)).ToArray();
        var choices = new List<Delivery?>[sinks.Length];
        for (var sink = 0; sink < choices.Length; sink++)
        {
            choices[sink] = [];
            foreach (var carrier in carriers)
            {
                if (!sinks[sink].IsNone && Deliver(carrier, sinks[sink].Value, node.Width) is { } delivery && IsInTime(node, delivery))
                {
                    choices[sink].Add(delivery);
                }
            }

            if (
                !sinks[sink].IsNone
                && first == node.Existing
                && DeliverAsIs(first.Value, sinks[sink].Value, node.Width) is { } asIs
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

    /// <summary>The runs that carry the line without any patch: its own points and what cables, paths through devices and fixed routing lead to.</summary>
    private List<int> Carriers(PointIndex[] points, int width)
    {
        var carriers = new List<int>();
        foreach (var point in points)
        {
            carriers.Add(point.Value);
        }

        for (var i = 0; i < carriers.Count; i++)
        {
            foreach (var next in graph.Fed(new PointIndex(carriers[i])))
            {
                var isStraight = true;
                for (var position = 0; position < width; position++)
                {
                    isStraight &=
                        next + position < graph.PointCount
                        && !problem.IsExcludedPoint[next + position]
                        && graph.Upstreams[next + position] == carriers[i] + position
                        && (
                            graph.Hops[next + position] is HopKind.Cable or HopKind.Through
                            || (graph.Hops[next + position] is HopKind.Fixed && !graph.IsClearable(new PointIndex(next + position)))
                        );
                }

                if (isStraight && !carriers.Contains(next))
                {
                    carriers.Add(next);
                }
            }
        }

        return carriers;
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

    /// <summary>
    /// For a run that is served in the input on a way the assignment would not find, through an insert for instance: the delivery that keeps it,
    /// from the last point before the stream or before the sink. Null when the way is plain or holds a cable or more than one stream.
    /// </summary>
    private Delivery? DeliverAsIs(int source, int sink, int width)
    {
        var last = LastBefore(source, sink);
        for (var position = 1; position < width; position++)
        {
            last = LastBefore(source + position, sink + position) == last + position ? last : -1;
        }

        return last < 0 || last == source || (width > 1 && graph.GroupOf(new PointIndex(last)) != graph.GroupOf(new PointIndex(last + width - 1)))
            ? null
            : Deliver(last, sink, width);
    }

    /// <summary>The point that is routed to the transmit slot of the only stream on the way to a sink, or without a stream to the sink; -1 when there is none.</summary>
    private int LastBefore(int source, int sink)
    {
        var upstream = graph.Upstreams;
        var last = -1;
        var streams = 0;
        foreach (var point in graph.Upward(new PointIndex(sink)))
        {
            if (point.Value == source)
            {
                return streams > 1 ? -1
                    : streams == 1 ? last
                    : upstream[sink];
            }

            if (graph.Via(point) == HopKind.Cable)
            {
                return -1;
            }

            if (graph.Via(point) is HopKind.Stream or HopKind.Carrier)
            {
                last = upstream[upstream[point.Value]];
                streams++;
            }
        }

        return -1;
    }

    /// <summary>The delivery from a source run to a sink run when devices, routing and network allow it at all.</summary>
    private Delivery? Deliver(int source, int sink, int width)
    {
        var sender = graph.DeviceOf(new PointIndex(source)).Index;
        var receiver = graph.DeviceOf(new PointIndex(sink)).Index;
        if (problem.IsExcluded[sender] || problem.IsExcluded[receiver] || IsExcluded(new PointIndex(sink), width))
        {
            return null;
        }

        var delivery = new Delivery(source, sink, width, sender, receiver);
        for (var position = 0; position < width; position++)
        {
            if (delivery.IsLocal ? !IsRoutable(source + position, sink + position) : !IsReachable(source + position, sink + position, sender, receiver))
            {
                return null;
            }
        }

        return delivery;
    }

    private bool IsRoutable(int source, int sink)
    {
        if (source == sink)
        {
            return true;
        }

        if (graph.FixedSource(new PointIndex(sink)) is { } always)
        {
            return always.Value == source;
        }

        return graph.RoutingBetween(new PointIndex(source), new PointIndex(sink)) is { Mode: RoutingMode.Free }
            || problem.Blocks.Find(source, sink) is { Size: 1 };
    }

    private bool IsReachable(int source, int sink, int sender, int receiver)
    {
        var toStream = false;
        var toCarrier = false;
        foreach (var block in problem.ReceiveBlocks)
        {
            if (block.Device != receiver || !Receives(block, sink))
            {
                continue;
            }

            toStream |= !block.IsCarrier;
            toCarrier |=
                block.IsCarrier && problem.TransmitBlocks[block.CarrierFrom].Device == sender && Sends(problem.TransmitBlocks[block.CarrierFrom], source);
        }

        if (toCarrier)
        {
            return true;
        }

        if (!toStream || problem.NetworkFrom(sender, receiver) < 0)
        {
            return false;
        }

        foreach (var block in problem.TransmitBlocks)
        {
            if (block.Device == sender && !block.IsCarrier && Sends(block, source))
            {
                return true;
            }
        }

        return false;
    }

    private bool Receives(ReceiveBlock block, int sink)
    {
        if (sink >= block.First && sink < block.First + block.Width)
        {
            return true;
        }

        if (graph.FixedSource(new PointIndex(sink)) is { } always)
        {
            return always.Value >= block.First && always.Value < block.First + block.Width && !problem.IsBarred[always.Value];
        }

        return (
                graph.RoutingBetween(new PointIndex(block.First), new PointIndex(sink)) is { Mode: RoutingMode.Free }
                && problem.IsBarred.AsSpan(block.First, block.Width).Contains(false)
            ) || (problem.Blocks.ReceiveSlot(sink) is >= 0 and var slot && slot >= block.First && slot < block.First + block.Width && !problem.IsBarred[slot]);
    }

    private bool Sends(TransmitBlock block, int source)
    {
        for (var slot = block.First; slot < block.First + block.Width; slot++)
        {
            if (
                !problem.IsBarred[slot]
                && (
                    slot == source
                    || (
                        graph.FixedSource(new PointIndex(slot)) is { } always
                            ? always.Value == source
                            : graph.RoutingBetween(new PointIndex(source), new PointIndex(slot)) is { Mode: RoutingMode.Free }
                                || problem.Blocks.Find(source, slot) is not null
                    )
                )
            )
            {
                return true;
            }
        }

        return false;
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
