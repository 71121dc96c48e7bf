using RoutingRules.Assignment;
using RoutingRules.Model;

namespace RoutingRules.Verification;

/// <summary>Looks at one result with nothing but the document.</summary>
internal sealed partial class ResultCheck
{
    private readonly AssignmentFacts facts;
    private readonly RigFacts rig;
    private readonly PatchTrace before;
    private readonly PatchTrace after;
    private readonly Show result;
    private readonly PointRange?[] at;
    private readonly HashSet<string> contradiction;
    private readonly Dictionary<Point, DemandFacts> places = [];
    private readonly List<TracedDelivery> deliveries = [];
    private readonly List<(DemandFacts Demand, PointRange? Sink)> failed = [];
    private readonly List<string> problems = [];

    /// <summary>Checks a result.</summary>
    /// <param name="facts">The input.</param>
    /// <param name="result">The show with its new patch.</param>
    /// <param name="at">For each demand the run it is said to stand at, null when it is said to be unplaced.</param>
    /// <param name="contradiction">Demands whose pins are said to contradict.</param>
    public ResultCheck(AssignmentFacts facts, Show result, PointRange?[] at, IEnumerable<string> contradiction)
    {
        this.facts = facts;
        this.result = result;
        this.at = at;
        this.contradiction = contradiction.ToHashSet(StringComparer.Ordinal);
        rig = facts.Rig;
        before = facts.Before;
        after = new PatchTrace(rig, result.Patch);
        foreach (var demand in facts.Demands)
        {
            foreach (var point in at[demand.Index] is { } run ? demand.Occupies(run) : [])
                places.TryAdd(point, demand);
        }
    }

    /// <summary>Everything that is wrong, in the order found.</summary>
    public IReadOnlyList<string> Problems => problems;

    /// <summary>Deliveries that are not made: the demand, and for a placed line the sink.</summary>
    public IReadOnlyList<(DemandFacts Demand, PointRange? Sink)> Failed => failed;

    /// <summary>The 14 numbers.</summary>
    public ObjectiveVector Vector =>
        VectorCount.Of(
            facts,
            at,
            facts.Demands.Select(demand => failed.Where(entry => entry.Demand == demand).Sum(entry => entry.Sink is null ? demand.Deliveries : 1)).ToList(),
            after,
            deliveries
        );

    /// <summary>Runs every check but those about the account the result gives of itself.</summary>
    /// <param name="withHolds">False to leave out whether holds yield without need.</param>
    public void Run(bool withHolds = true)
    {
        CheckDocument();
        problems.AddRange(PlacementRules.Problems(facts, at));
        CheckPins();
        Deliver();
        CheckRoutes();
        CheckBlockRoutes();
        CheckStreams();
        CheckSlots();
        CheckPrivacy();
        CheckStaying();
        CheckLimits();
        CheckLinks();
        CheckOutputs();
        CheckDownstream();
        CheckChannels();
        if (withHolds)
            CheckHolds();
    }

    private void Report(string problem) => problems.Add(problem);

    private void CheckDocument()
    {
        var patch = facts.Input.Patch;
        if (result with { Patch = patch } != facts.Input)
            Report("The result differs from the input in more than its patch; only routes and streams may change.");

        if (result.Patch with { Routes = patch.Routes, Streams = patch.Streams } != patch)
            Report("The result changes inputs, labels or extensions of the patch; only routes and streams may change.");
    }

    private void CheckPins()
    {
        foreach (var demand in facts.Demands)
        {
            if (contradiction.Contains(demand.Key) && at[demand.Index] is not null)
                Report($"{demand.Key} is placed although its pin is said to contradict others.");

            if (at[demand.Index] is { } place && facts.IsForbidden(demand, place))
                Report($"{demand.Key} is placed at {place}, which the options forbid.");

            if (
                demand is not { IsPinned: true, Feed: not null }
                || at[demand.Index] is not null
                || contradiction.Contains(demand.Key)
                || facts.IsPinOutOfUse(demand)
                || facts.IsForbidden(demand, demand.Runs[0])
            )
                continue;

            // With routing in blocks nobody needs to have tried all routes, so that a pin may be left out without a contradiction being claimed.
            if (facts.RoutesInBlocks)
                continue;

            // A pair pinned on an even number is honoured only while both slots come in one stream; otherwise it counts as unplaced.
            if (demand.Width == 1 || demand.Runs[0].First % 2 == 1)
                Report($"{demand.Key} is pinned to {demand.Runs[0]} and is not placed; place it or say which pins contradict.");
        }
    }

    private void Deliver()
    {
        foreach (var demand in facts.Demands)
        {
            if (at[demand.Index] is not { } run)
            {
                failed.Add((demand, null));
            }
            else if (demand.Line is not { } line)
            {
                if (TryDeliver(demand, run, demand.Feed!.Source) is { } reason)
                {
                    failed.Add((demand, null));
                    Report($"{demand.Key} is said to be at {run}, but {reason}.");
                }
            }
            else
            {
                DeliverLine(demand, line, run);
            }
        }
    }

    private void DeliverLine(DemandFacts demand, Line line, PointRange run)
    {
        IReadOnlyList<PointRange> runs = demand.IsSplit ? demand.Runs : [run];
        var missed = new List<PointRange>();
        foreach (var sink in demand.Sinks)
        {
            if (!runs.Any(from => TryDeliver(demand, sink, from) is null))
                missed.Add(sink);
        }

        failed.AddRange(missed.Select(sink => (demand, (PointRange?)sink)));
        if (missed.Count == demand.Deliveries && missed.Count > 0)
            Report($"{demand.Key} is said to be at {run}, but reaches none of its sinks: {TryDeliver(demand, missed[0], runs[0])}.");
    }

    // Null when the delivery is made, and then it is noted; otherwise what is wrong with it.
    private string? TryDeliver(DemandFacts demand, PointRange sinks, PointRange sources)
    {
        if (!rig.Exists(sinks) || sinks.Width != sources.Width)
            return $"{sinks} does not fit {sources}";

        var points = new List<Point>();
        var transmit = new List<Point>();
        var receive = new List<Point>();
        var streams = new HashSet<int>();
        for (var i = 0; i < sinks.Width; i++)
        {
            var chain = after.Follow(sinks[i]);
            var end = chain.IndexOf(sources[i]);
            if (end < 0)
                return $"{sinks[i]} carries {Name(chain.Source)} instead of {sources[i]}";

            var hops = 0;
            for (var step = 0; step < end; step++)
            {
                if (Wrong(demand, chain, step) is { } reason)
                    return reason;

                if (chain.Steps[step].Kind == StepKind.Stream)
                {
                    if (Lost(chain, step) is { } lost)
                        return lost;

                    hops++;
                    streams.Add(chain.Steps[step].Stream);
                    receive.Add(chain.Points[step]);
                    transmit.Add(chain.Points[step + 1]);
                }
                else if (chain.Steps[step].Kind == StepKind.Carrier)
                {
                    hops++;
                    streams.Add(-1);
                    receive.Add(chain.Points[step]);
                    transmit.Add(chain.Points[step + 1]);
                }
            }

            if (Late(demand, chain, end) is { } late)
                return late;

            if (hops > 1)
                return $"{sources[i]} reaches {sinks[i]} over {hops} network hops in a row, and one is the most";

            if (hops == 0)
                streams.Add(-1);

            points.AddRange(chain.Points.Take(end + 1));
        }

        if (streams.Count > 1)
            return $"the two sides of {sinks} do not come in one stream";

        if (points.FirstOrDefault(rig.IsExcluded) is { Number: > 0 } excluded)
            return $"{excluded} is on the path and must not be used";

        deliveries.Add(
            new TracedDelivery
            {
                Demand = demand,
                Sinks = sinks,
                Transmit = transmit,
                Receive = receive,
                Points = points,
                Stream = streams.Single(),
            }
        );
        return null;
    }

    // A stream that stays serves nobody it has no way to.
    private string? Lost(Chain chain, int step)
    {
        var stream = result.Patch.Streams[chain.Steps[step].Stream];
        return
            Stays(stream)
            && rig.Group(stream.From) is { } sender
            && rig.Group(chain.Points[step]) is { } taker
            && facts.Networks.Tree(stream.Network, sender, [taker]) is null
            ? $"{stream.Id} has no path over the network {stream.Network} to {chain.Points[step]}"
            : null;
    }

    private string? Wrong(DemandFacts demand, Chain chain, int step)
    {
        var (to, from) = (chain.Points[step], chain.Points[step + 1]);
        switch (chain.Steps[step].Kind)
        {
            case StepKind.Cable when demand.Feed is not null:
                return $"{to} gets it by a cable from {from} instead of by the network";
            case StepKind.Route when !IsAllowed(from, to):
                return $"{to} takes {from}, which the device cannot route";
        }

        // The place itself is judged by the rules about places; slots on the way have no pin that could excuse them.
        if (step > 0 && rig.Kind(to) is Profiles.PortKind.Transmit or Profiles.PortKind.Receive && !rig.IsUsable(to))
            return $"{to} is on the path and is {(rig.IsDead(to) ? "dead" : "reserved")}";

        return null;
    }

    private static string Name(Point? source) => source is { } point ? point.ToString() : "silence";
}
