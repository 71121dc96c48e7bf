using RoutingRules.Model;

namespace RoutingRules.Planning.RunningOrders;

/// <summary>Counts what the acts need at once.</summary>
internal static class KitCounter
{
    public static ValueList<KitTotal> Count(IReadOnlyList<ActPlan> acts)
    {
        var counts = new Dictionary<(KitKind Kind, string Name, string? From), Dictionary<Id<Act>, int>>();
        foreach (var act in acts)
        {
            foreach (var item in act.Show.Lines.SelectMany(KitItems.Of).Concat(KitItems.Of(act.Show.Feeds)))
            {
                var key = (item.Kind, item.Name, item.SuppliedBy);
                if (!counts.TryGetValue(key, out var byAct))
                {
                    counts.Add(key, byAct = []);
                }

                byAct[act.Act.Id] = byAct.GetValueOrDefault(act.Act.Id) + item.Count;
            }
        }

        return counts
            .OrderBy(entry => entry.Key.Kind)
            .ThenBy(entry => entry.Key.Name, StringComparer.Ordinal)
            .ThenBy(entry => entry.Key.From, StringComparer.Ordinal)
            .Select(entry => new KitTotal
            {
                Kind = entry.Key.Kind,
                Name = entry.Key.Name,
                SuppliedBy = entry.Key.From,
                Most = entry.Value.Values.Max(),
                Acts = acts.Select(act => act.Act.Id).Where(entry.Value.ContainsKey).Distinct().ToValueList(),
            })
            .ToValueList();
    }
}
