using RoutingRules.Model;
using RoutingRules.Planning.Changeovers;
using RoutingRules.Profiles;
using RoutingRules.Resolving;

namespace RoutingRules.Planning.RunningOrders;

/// <summary>Which line stands at which input in which act. A line stays plugged where the act before has it at the same input.</summary>
internal static class FestivalGrid
{
    /// <summary>The inputs that any act uses, in the order of the rig.</summary>
    public static ValueList<GridRow> Of(IReadOnlyList<ResolvedShow> acts)
    {
        var rows = new Dictionary<Point, (string Id, int Half, string Name)?[]>();
        for (var act = 0; act < acts.Count; act++)
        {
            var graph = acts[act].Graph;
            foreach (var line in acts[act].Lines)
            {
                foreach (var first in PlugPlaces.Of(graph, acts[act].Demands[line.Demand]))
                {
                    for (var half = 0; !first.IsNone && half < line.Width && graph.GroupOf(first).Kind == PortKind.Input; half++)
                    {
                        var at = graph.Address(first + half);
                        if (!rows.TryGetValue(at, out var cells))
                        {
                            rows.Add(at, cells = new (string Id, int Half, string Name)?[acts.Count]);
                        }

                        var name = line.Width < 2 ? line.DisplayName : $"{line.DisplayName} {(half == 0 ? "L" : "R")}";
                        cells[act] ??= (line.Model.Id.Value, half, name);
                    }
                }
            }
        }

        return rows.OrderBy(row => acts[0].Graph.Find(row.Key).Value)
            .Select(row => new GridRow
            {
                At = row.Key,
                Acts = row
                    .Value.Select(
                        (cell, act) =>
                            cell is not { } here
                                ? null
                                : new GridCell(here.Name, act > 0 && row.Value[act - 1] is { } was && (was.Id, was.Half) == (here.Id, here.Half))
                    )
                    .ToValueList(),
            })
            .ToValueList();
    }
}
