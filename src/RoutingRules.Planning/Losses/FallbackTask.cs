using RoutingRules.Model;
using RoutingRules.Resolving;

namespace RoutingRules.Planning.Losses;

/// <summary>What a plan is made for: what is lost, and what it silences.</summary>
internal sealed class FallbackTask
{
    private readonly FailureModel model;
    private readonly ResolvedShow show;
    private readonly HashSet<int> silenced;
    private readonly HashSet<int> points;
    private readonly HashSet<DemandNode> living;
    private readonly Dictionary<string, List<Arrival>> silencedOf = new(StringComparer.Ordinal);

    public FallbackTask(FailureModel model, LossSet lost, HashSet<int> silenced, Dictionary<string, int> rankOf)
    {
        this.model = model;
        this.silenced = silenced;
        show = model.Show;
        Lost = lost;
        points = [.. lost.Points];
        living = model
            .Deliveries.Where((delivery, i) => delivery.Demand.Feed is not null && !silenced.Contains(i))
            .Select(delivery => delivery.Demand)
            .ToHashSet();
        foreach (var delivery in silenced.Order().Select(index => model.Deliveries[index]))
        {
            // What still plays over another cable stays where it is.
            if (living.Contains(delivery.Demand))
            {
                Beyond.Add(delivery);
                continue;
            }

            if (!silencedOf.TryGetValue(delivery.Demand.Key, out var list))
            {
                silencedOf.Add(delivery.Demand.Key, list = []);
                Demands.Add(delivery.Demand);
            }

            list.Add(delivery);
        }

        Demands = [.. Demands.OrderBy(demand => rankOf[demand.Key]).ThenBy(demand => demand.Index)];
    }

    public LossSet Lost { get; }

    /// <summary>What it silences behind one cable of an output while another goes on: nothing to place anew.</summary>
    public List<Arrival> Beyond { get; } = [];

    /// <summary>The demands it silences somewhere, the most important first.</summary>
    public List<DemandNode> Demands { get; } = [];

    /// <summary>The names an assignment has to do without; of lost cables the outputs they start at.</summary>
    public IEnumerable<string> Without
    {
        get
        {
            foreach (var device in show.Devices.Where(device => Lost.Devices[device.Index]))
            {
                yield return device.Id.Value;
            }

            foreach (var link in show.Links.Where(link => Lost.Links[link.Index]))
            {
                yield return link.Model.Id.Value;
            }

            foreach (var cable in show.Cables.Where(cable => Lost.Cables[cable.Index] && !Lost.Devices[show.Graph.DeviceOf(cable.From).Index]))
            {
                // An output at which something goes on over another cable stays in use.
                var outputs = Enumerable
                    .Range(0, cable.Model.From.Width)
                    .Where(i => show.DemandAt(cable.From + i) is not { } at || !living.Contains(at))
                    .ToList();
                foreach (
                    var name in outputs.Count == cable.Model.From.Width ? [cable.Model.From.ToString()] : outputs.Select(i => cable.Model.From[i].ToString())
                )
                {
                    yield return name;
                }
            }

            foreach (var point in points.Order())
            {
                yield return show.Graph.Address(new PointIndex(point)).ToString();
            }
        }
    }

    public List<Arrival> SilencedOf(DemandNode demand) => silencedOf[demand.Key];

    /// <summary>True for a demand that the loss silences somewhere.</summary>
    public bool IsHarmed(DemandNode demand) => silencedOf.ContainsKey(demand.Key);

    public bool IsSilenced(int delivery) => silenced.Contains(delivery);

    public bool IsAtLost(PointIndex point) => Lost.Devices[show.Graph.DeviceOf(point).Index] || points.Contains(point.Value);

    /// <summary>
    /// True when no patch can bring anything of the demand back: its source or all its sinks are lost, or all that plays it at places it may take.
    /// </summary>
    public bool IsHopeless(DemandNode demand)
    {
        if (SilencedOf(demand).Exists(delivery => Reason(delivery) is null))
        {
            return false;
        }

        return demand.Feed is not { } feed || IsAtLost(feed.Source) || !demand.Allowed.Any(run => Plays(run, demand.Width));
    }

    /// <summary>True when a place the document allows is left that the demand's other end still reaches.</summary>
    public bool HasAllowedPlace(DemandNode demand) => demand.Allowed.Any(run => !IsAtLost(run) && IsReached(demand, show.Graph.DeviceOf(run)));

    /// <summary>
    /// True when a way is left over some network between a device and the source of a feed or a sink of a line; digital multicores count as ways while one link
    /// of them is left.
    /// </summary>
    public bool IsReached(DemandNode demand, DeviceNode device)
    {
        foreach (var other in demand.Feed is { } feed ? [feed.Source] : demand.Line!.Sinks.Where(sink => !sink.IsNone && !IsAtLost(sink)))
        {
            var far = show.Graph.DeviceOf(other);
            if (far == device || IsCarried(device))
            {
                return true;
            }

            for (var network = 0; network < show.Document.Rig.Networks.Count; network++)
            {
                if (model.Way(network, demand.Feed is null ? device : far, demand.Feed is null ? far : device, Lost) is not null)
                {
                    return true;
                }
            }
        }

        return false;
    }

    private bool IsCarried(DeviceNode device) =>
        device.Groups.Any(group => group.IsCarrier)
        && show.Links.Any(link =>
            link.State == ConnectionState.Connected
            && !Lost.Links[link.Index]
            && (show.Graph.DeviceOf(link.From) == device || show.Graph.DeviceOf(link.To) == device)
        );

    private bool Plays(PointIndex run, int width) => Enumerable.Range(0, width).All(position => Plays((run + position).Value, []));

    /// <summary>True when something is left that plays a point, over any of its cables.</summary>
    private bool Plays(int point, HashSet<int> passed)
    {
        if (IsAtLost(new PointIndex(point)))
        {
            return false;
        }

        var fed = show.Graph.Fed(new PointIndex(point)).ToArray();
        return fed.Length == 0
            || !passed.Add(point)
            || Array.Exists(
                fed,
                next =>
                    !(show.Graph.Via(new PointIndex(next)) == HopKind.Cable && Lost.Cables[show.Graph.ViaIndex(new PointIndex(next))]) && Plays(next, passed)
            );
    }

    /// <summary>
    /// True when something of the demand can be plugged at another point: it is plugged at all, its source lives, and so does what it plays through.
    /// </summary>
    public bool CanMove(DemandNode demand) =>
        (demand.Line is null ? show.Graph.GroupOf(demand.Existing).IsLineOutput : demand.Line.Model.From.Source is null)
        && SilencedOf(demand).Exists(delivery => Reason(delivery) is null);

    /// <summary>True when the rig shows a cable where the demand is plugged.</summary>
    public bool IsCabled(DemandNode demand) =>
        Enumerable.Range(0, demand.Width).Any(position => FallbackWriter.IsCabled(show.Graph, demand.Existing + position));

    /// <summary>Why no other place could bring a delivery back; null when one could.</summary>
    public string? Reason(Arrival delivery)
    {
        var demand = delivery.Demand;
        if (demand.Feed is { } feed && IsAtLost(feed.Source))
        {
            return $"Its source {feed.Model.Source} is lost.";
        }

        if (demand.Line is { } line && line.Model.From.Source is not null && IsAtLost(delivery.Run))
        {
            return $"Its source {line.Model.From.Source} is lost.";
        }

        for (var position = 0; position < demand.Width; position++)
        {
            var at = new PointIndex(delivery.Ends[position]);
            if (demand.Line is not null)
            {
                if (IsAtLost(at))
                {
                    return $"{delivery.At} itself is lost.";
                }

                continue;
            }

            for (var steps = 0; at != delivery.Run + position && !at.IsNone && steps <= show.Graph.PointCount; steps++, at = show.Graph.Upstream(at))
            {
                if (IsAtLost(at))
                {
                    return $"What plays it, {show.Graph.Address(at)}, is lost.";
                }

                if (show.Graph.Via(at) == HopKind.Cable && Lost.Cables[show.Graph.ViaIndex(at)])
                {
                    return $"The cable to {show.Graph.Address(at)} is lost.";
                }
            }
        }

        return null;
    }

    /// <summary>The account of a plan that brings nothing back.</summary>
    /// <param name="harm">What every patch found would do; null when that is not why.</param>
    /// <param name="known">What is known to stay silent, when that is why.</param>
    public ValueList<UnrecoveredDemand> Nothing(string? harm, IEnumerable<UnrecoveredDemand> known) =>
        harm is null
            ? known.ToValueList()
            : Demands.SelectMany(SilencedOf).Concat(Beyond).Select(delivery => Unrecovered(delivery, $"Every patch found for it would {harm}.")).ToValueList();

    /// <summary>What stays silent, with what no patch could change, or else another reason.</summary>
    public UnrecoveredDemand Unrecovered(Arrival delivery, string otherwise) =>
        new()
        {
            Demand = delivery.Demand.Key,
            Sink = delivery.Sink < 0 && !delivery.IsBranch ? null : delivery.At,
            Reason = Reason(delivery) ?? otherwise,
        };
}
