using System.Globalization;
using RoutingRules.Checking.Facts.Documents;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Facts;

/// <summary>Entities that tell a finding of several members from the one it was with fewer.</summary>
internal static class Identities
{
    /// <summary>For members that only their number tells apart: one entity for the second, the third and so on.</summary>
    public static IEnumerable<Entity> Further(string role, int count)
    {
        for (var number = 2; number <= count; number++)
        {
            yield return Entity.Of(role, number.ToString(CultureInfo.InvariantCulture));
        }
    }

    /// <summary>One entity for each place that names a thing; those of one place that only their number tells apart have it.</summary>
    public static IEnumerable<Entity> Places(IEnumerable<Place> places)
    {
        var seen = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (var place in places)
        {
            var name = place.Identity;
            var times = seen[name] = seen.GetValueOrDefault(name) + 1;
            yield return Entity.Of("named-in", times == 1 ? name : string.Create(CultureInfo.InvariantCulture, $"{name} ({times})"));
        }
    }
}
