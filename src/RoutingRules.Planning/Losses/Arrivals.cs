using RoutingRules.Model;
using RoutingRules.Resolving;
using RoutingRules.Signal.Existing;

namespace RoutingRules.Planning.Losses;

/// <summary>The places at which feeds and lines arrive.</summary>
internal sealed class Arrivals
{
    private readonly ResolvedShow show;
    private readonly Func<int, bool> isSilent;

    /// <summary>Finds them.</summary>
    /// <param name="show">The show.</param>
    /// <param name="isSilent">True for a point that carries nothing as the show stands.</param>
    public Arrivals(ResolvedShow show, Func<int, bool> isSilent)
    {
        this.show = show;
        this.isSilent = isSilent;
        var feeds = new Dictionary<Id<Feed>, int>();
        foreach (var feed in show.Feeds)
        {
            feeds.TryAdd(feed.Model.Id, Subjects.Count);
            Subjects.Add(
                new LossSubject
                {
                    Feed = feed,
                    Index = Subjects.Count,
                    IsInEar = EarDemands.IsInEar(show, feed),
                }
            );
        }

        foreach (var subject in Subjects)
        {
            if (subject.Feed!.Model.BackupOf is { } backed && feeds.TryGetValue(backed, out var of) && of != subject.Index)
            {
                Subjects[of].Backups.Add(subject.Index);
            }
        }

        foreach (var line in show.Lines)
        {
            Subjects.Add(new LossSubject { Line = line, Index = Subjects.Count });
        }

        foreach (var demand in show.Demands)
        {
            var subject = Subjects[demand.Feed?.Index ?? show.Feeds.Count + demand.Line!.Index];
            var before = Deliveries.Count;
            var isWhole = demand.Feed is null ? AddLine(demand) : AddFeed(demand);
            for (var i = before; i < Deliveries.Count; i++)
            {
                subject.Deliveries.Add(i);
            }

            if (!isWhole)
            {
                NotArriving.Add(demand.Key);
            }
        }

        foreach (var (at, delivery) in Deliveries.SelectMany((delivery, i) => delivery.Ends.Select(end => (end, i))))
        {
            if (!At.TryGetValue(at, out var list))
            {
                At.Add(at, list = []);
            }

            list.Add(delivery);
        }
    }

    public List<Arrival> Deliveries { get; } = [];

    /// <summary>Feeds, then lines; also those that arrive nowhere.</summary>
    public List<LossSubject> Subjects { get; } = [];

    /// <summary>Keys of demands that do not arrive as the show stands, in demand order.</summary>
    public List<string> NotArriving { get; } = [];

    /// <summary>The deliveries that end at a point.</summary>
    public Dictionary<int, List<int>> At { get; } = [];

    private bool AddFeed(DemandNode demand)
    {
        if (demand.Existing.IsNone)
        {
            return false;
        }

        var at = demand.Existing;
        if (demand.Feed!.Model.To[demand.Entry].At is { } pinned && show.Graph.Find(pinned, out var first) == ConnectionState.Connected)
        {
            at = first;
        }

        var players = new List<(int Place, int End)>[demand.Width];
        for (var position = 0; position < demand.Width; position++)
        {
            players[position] = Players.Of(show, at.Value + position);
            if (players[position].Exists(player => isSilent(player.End)))
            {
                return false;
            }
        }

        // Each cable of an output is a place of its own: one of them may fall silent alone.
        var count = players.Max(found => found.Count);
        for (var i = 0; i < count; i++)
        {
            var some = Array.ConvertAll(players, found => found[Math.Min(i, found.Count - 1)]);
            Deliveries.Add(
                new Arrival
                {
                    Demand = demand,
                    Run = demand.Existing,
                    At =
                        count > 1 && IsRun(show.Graph, some)
                            ? show.Graph.Address(new PointIndex(some[0].Place), demand.Width)
                            : show.Graph.Address(at, demand.Width),
                    Ends = Array.ConvertAll(some, player => player.End),
                    IsBranch = count > 1,
                }
            );
        }

        return true;
    }

    private static bool IsRun(SignalGraph graph, (int Place, int End)[] some)
    {
        var group = graph.GroupOf(new PointIndex(some[0].Place));
        return Enumerable.Range(0, some.Length).All(i => some[i].Place == some[0].Place + i && graph.GroupOf(new PointIndex(some[i].Place)) == group);
    }

    private bool AddLine(DemandNode demand)
    {
        var isWhole = !demand.Existing.IsNone;
        for (var i = 0; !demand.Existing.IsNone && i < demand.Line!.Sinks.Count; i++)
        {
            var sink = demand.Line.Sinks[i];
            var run = sink.IsNone ? PointIndex.None : RunOf(show.Graph, demand, sink);
            var ends = Enumerable.Range(sink.Value, demand.Width).ToArray();
            if (run.IsNone || ends.Any(isSilent))
            {
                isWhole = false;
                continue;
            }

            Deliveries.Add(
                new Arrival
                {
                    Demand = demand,
                    Sink = i,
                    Run = run,
                    At = show.Graph.Address(sink, demand.Width),
                    Ends = ends,
                }
            );
        }

        return isWhole;
    }

    /// <summary>The run of a line that a sink traces to; of a split line any of its points.</summary>
    private static PointIndex RunOf(SignalGraph graph, DemandNode demand, PointIndex sink)
    {
        if (demand.Line!.Model.From.At.IsEmpty)
        {
            return ExistingPlacements.Carries(graph, sink, demand.Existing, demand.Width) ? demand.Existing : PointIndex.None;
        }

        foreach (var run in demand.Allowed)
        {
            if (ExistingPlacements.Carries(graph, sink, run, demand.Width))
            {
                return run;
            }
        }

        return PointIndex.None;
    }
}
