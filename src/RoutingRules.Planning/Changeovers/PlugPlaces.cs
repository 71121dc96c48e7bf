using RoutingRules.Model;
using RoutingRules.Planning.Comparing;
using RoutingRules.Profiles;
using RoutingRules.Resolving;

namespace RoutingRules.Planning.Changeovers;

/// <summary>What is plugged in where: lines at inputs, and whatever a feed is for at outputs that have no cable in the rig.</summary>
internal static class PlugPlaces
{
    /// <summary>The plugs of a show, in demand order.</summary>
    public static List<Plug> Of(ShowSide side, ShowComparer shows, bool isBefore)
    {
        var cabled = side
            .Show.Cables.Where(cable => cable.State == ConnectionState.Connected)
            .SelectMany(cable => Enumerable.Range(0, cable.Model.From.Width).SelectMany(i => new[] { cable.From.Value + i, cable.To.Value + i }))
            .ToHashSet();
        var plugs = new List<Plug>();
        foreach (var demand in side.Show.Demands)
        {
            var key = shows.KeyOf(demand, isBefore);
            var places = Of(side.Graph, demand);
            for (var i = 0; i < places.Length; i++)
            {
                var first = places[i];
                if (
                    !first.IsNone
                    && side.Graph.GroupOf(first).Kind is PortKind.Input or PortKind.Output
                    && !Enumerable.Range(first.Value, demand.Width).Any(cabled.Contains)
                )
                {
                    plugs.Add(
                        new Plug((key.IsFeed, key.Id, key.Entry + i), demand, side.Graph.Address(first, demand.Width), key.IsFeed && side.LeadsToEars(first))
                    );
                }
            }
        }

        return plugs;
    }

    /// <summary>
    /// The first points at which a demand is plugged in, none for one that stands nowhere: of a split line all; empty for a line that is born in a device.
    /// </summary>
    public static PointIndex[] Of(SignalGraph graph, DemandNode demand) =>
        demand.Line is null ? [demand.Existing]
        : !demand.Line.Source.IsNone ? []
        : demand.Line.Model.From.At.IsEmpty ? [demand.Existing]
        : [.. demand.Line.Model.From.At.Select(at => Find(graph, at))];

    private static PointIndex Find(SignalGraph graph, PointRange at) => graph.Find(at, out var first) == ConnectionState.Connected ? first : PointIndex.None;
}
