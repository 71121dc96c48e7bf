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
            foreach (var line in act.Show.Lines)
            {
                Add(act, KitKind.Equipment, line.Equipment, line.SuppliedBy, line.Width);
                Add(act, KitKind.Stand, line.Stand, null, 1);
            }

            foreach (var pack in act.Show.Feeds.Where(feed => !string.IsNullOrEmpty(feed.Pack)).Select(feed => feed.Pack).Distinct(StringComparer.Ordinal))
            {
                Add(act, KitKind.Pack, pack, null, 1);
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

        void Add(ActPlan act, KitKind kind, string? name, string? from, int count)
        {
            if (string.IsNullOrWhiteSpace(name))
            {
                return;
            }

            var key = (kind, name.Trim(), string.IsNullOrWhiteSpace(from) ? null : from.Trim());
            if (!counts.TryGetValue(key, out var byAct))
            {
                counts.Add(key, byAct = []);
            }

            byAct[act.Act.Id] = byAct.GetValueOrDefault(act.Act.Id) + count;
        }
    }
}
