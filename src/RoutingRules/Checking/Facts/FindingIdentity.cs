using System.Globalization;
using RoutingRules.Model;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Facts;

/// <summary>Keeps the identities of the findings of one document apart.</summary>
internal static class FindingIdentity
{
    private const string Role = "occurrence";

    /// <summary>
    /// Of findings of one rule about the same entities, the second and further ones get a number as one more entity. They are numbered by message, so
    /// that the order of the document does not matter; those that say the same word for word differ by nothing but the place.
    /// </summary>
    public static void MakeDistinct(List<Finding> findings)
    {
        var first = new Dictionary<(string Rule, ValueList<Entity> Entities), int>(findings.Count);
        SortedDictionary<int, List<int>>? groups = null;
        for (var i = 0; i < findings.Count; i++)
        {
            var identity = (findings[i].Rule, findings[i].Identity());
            if (!first.TryAdd(identity, i))
            {
                var begin = first[identity];
                groups ??= [];
                if (!groups.TryGetValue(begin, out var group))
                {
                    groups.Add(begin, group = [begin]);
                }

                group.Add(i);
            }
        }

        foreach (var group in groups?.Values ?? Enumerable.Empty<List<int>>())
        {
            Number(findings, group);
        }
    }

    /// <summary>
    /// True when a finding says nothing that another of its rule does not say as well: each of its entities is one of the other's, or a run of points
    /// inside one. So a finding of several points of which some were mended is no new one.
    /// </summary>
    public static bool IsPartOf(this Finding finding, Finding whole)
    {
        if (finding.Rule != whole.Rule)
        {
            return false;
        }

        foreach (var entity in finding.Entities)
        {
            var isCovered = false;
            for (var i = 0; !isCovered && i < whole.Entities.Count; i++)
            {
                isCovered = whole.Entities[i] == entity || Covers(whole.Entities[i], entity);
            }

            if (!isCovered)
            {
                return false;
            }
        }

        return true;
    }

    private static bool Covers(Entity whole, Entity part) =>
        whole.Role == part.Role
        && PointRange.TryParse(whole.Id, out var outer, out _)
        && PointRange.TryParse(part.Id, out var inner, out _)
        && outer.Device == inner.Device
        && outer.Group == inner.Group
        && outer.First <= inner.First
        && inner.Last <= outer.Last;

    private static void Number(List<Finding> findings, List<int> group)
    {
        group.Sort((x, y) => Compare(findings[x], findings[y]));
        for (var n = 1; n < group.Count; n++)
        {
            var finding = findings[group[n]];
            findings[group[n]] = finding with { Entities = [.. finding.Entities, Entity.Of(Role, (n + 1).ToString(CultureInfo.InvariantCulture))] };
        }
    }

    private static int Compare(Finding x, Finding y)
    {
        var order = string.CompareOrdinal(x.Message, y.Message);
        return order != 0 ? order : FindingOrder.Instance.Compare(x, y);
    }
}
