using RoutingRules.Model;
using RoutingRules.Profiles;

namespace RoutingRules.Verification;

/// <summary>What keeps a demand from being served where its signal arrives in the input: the wishes of other demands.</summary>
internal sealed class ExistingNeighbours
{
    private readonly RigFacts rig;
    private readonly PatchTrace input;
    private readonly NetworkFacts networks;
    private readonly HashSet<Point> named;
    private readonly List<(DemandFacts One, DemandFacts Other, SeparationBy By)> apart = [];

    public ExistingNeighbours(List<DemandFacts> demands, RigFacts rig, PatchTrace input)
    {
        this.rig = rig;
        this.input = input;
        networks = new NetworkFacts(rig, ignoresExclusions: true);
        named = Named(demands, rig);
        foreach (var demand in demands)
        {
            foreach (var separation in demand.Feed?.SeparateFrom ?? default)
            {
                var other = demands.FirstOrDefault(candidate => candidate.Feed?.Id == separation.Feed);
                if (
                    other is not null
                    && other.Feed != demand.Feed
                    && demands.FirstOrDefault(candidate => candidate.Feed == other.Feed && candidate.Entry == demand.Entry) is { } same
                )
                    apart.Add((demand, same, separation.By));
            }

            if (demand.Feed is { Spread: true } feed)
                apart.AddRange(demands.Where(other => other.Feed == feed && other.Entry > demand.Entry).Select(other => (demand, other, SeparationBy.Device)));
        }
    }

    /// <summary>The points that the document itself gives to demands: pins, and outputs that a line names.</summary>
    public static HashSet<Point> Named(IEnumerable<DemandFacts> demands, RigFacts rig) =>
        demands
            .SelectMany(demand =>
                (demand.IsPinned ? demand.Runs.ToList() : []).Concat(
                    (demand.Line?.To ?? default).Where(sink => rig.Exists(sink) && rig.Kind(sink[0]) == PortKind.Output)
                )
            )
            .SelectMany(run => Enumerable.Range(0, run.Width).Select(i => run[i]))
            .ToHashSet();

    /// <summary>Demands that must stay apart, each pair once for each way.</summary>
    public IEnumerable<(DemandFacts One, DemandFacts Other)> Pairs => apart.Select(entry => (entry.One, entry.Other));

    /// <summary>True when a point of a run is given to a demand by the document itself.</summary>
    public bool IsNamed(PointRange run) => Enumerable.Range(0, run.Width).Any(i => named.Contains(run[i]));

    /// <summary>True when a demand must stay apart from some other.</summary>
    public bool HasAny(DemandFacts demand) => apart.Exists(entry => entry.One == demand || entry.Other == demand);

    /// <summary>True when two demands at two runs of the input are nearer than they may be.</summary>
    public bool Clash(DemandFacts one, PointRange at, DemandFacts other, PointRange otherAt) =>
        apart
            .Where(entry => (entry.One == one && entry.Other == other) || (entry.One == other && entry.Other == one))
            .Any(entry =>
                entry.By switch
                {
                    SeparationBy.Device => at.Device == otherAt.Device,
                    SeparationBy.Power => Power(at).Intersect(Power(otherAt)).Any(),
                    _ => Links(one, at).Overlaps(Links(other, otherAt)),
                }
            );

    private ValueList<Id<PowerSource>> Power(PointRange run) => rig.Device(run.Device)?.Model.Power ?? default;

    // Every link of the trees of the streams on the way.
    private HashSet<Id<Link>> Links(DemandFacts demand, PointRange at)
    {
        var links = new HashSet<Id<Link>>();
        for (var i = 0; i < at.Width; i++)
        {
            var chain = input.Follow(at[i]);
            foreach (var step in chain.Steps.Take(chain.IndexOf(demand.Feed!.Source[i])).Where(step => step.Kind == StepKind.Stream))
            {
                var stream = input.Patch.Streams[step.Stream];
                var receivers = stream.To.Select(receiver => rig.Group(receiver.At)).OfType<GroupFacts>();
                links.UnionWith(networks.Tree(stream.Network, rig.Group(stream.From)!, receivers, skipsLost: true)!.Select(tree => tree.Link));
            }
        }

        return links;
    }
}
