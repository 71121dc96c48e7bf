using RoutingRules.Model;

namespace RoutingRules.Planning.Comparing;

/// <summary>
/// Recognises things that have another id in the second show: one that is gone and one that is new, alike in what matters, and no other like them.
/// </summary>
internal static class Renames
{
    /// <summary>New device ids by old ones.</summary>
    public static Dictionary<string, string> OfDevices(Show before, Show after) =>
        Match(before.Rig.Devices, after.Rig.Devices, static device => device.Id.Value, static device => (device.Profile, device.Label, device.Zone));

    /// <summary>New feed ids by old ones: the same source, role and destinations.</summary>
    public static Dictionary<string, string> OfFeeds(Show before, Show after) =>
        Match(before.Feeds, after.Feeds, static feed => feed.Id.Value, static feed => (feed.Source, feed.Role, feed.To));

    /// <summary>New line ids by old ones: the same kind, need of phantom power, origin and channels.</summary>
    public static Dictionary<string, string> OfLines(Show before, Show after) =>
        Match(before.Lines, after.Lines, static line => line.Id.Value, static line => (line.Kind, line.Phantom, line.Width, line.From, line.To));

    private static Dictionary<string, string> Match<T, TKey>(ValueList<T> before, ValueList<T> after, Func<T, string> id, Func<T, TKey> alike)
        where TKey : notnull
    {
        var old = before.Select(id).ToHashSet(StringComparer.Ordinal);
        var now = after.Select(id).ToHashSet(StringComparer.Ordinal);
        var gone = Single(before.Where(element => !now.Contains(id(element))), alike);
        var come = Single(after.Where(element => !old.Contains(id(element))), alike);
        var renames = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var (key, element) in gone)
        {
            if (element is not null && come.GetValueOrDefault(key) is { } other)
            {
                renames.Add(id(element), id(other));
            }
        }

        return renames;
    }

    /// <summary>The only element of each likeness; null where there are several.</summary>
    private static Dictionary<TKey, T?> Single<T, TKey>(IEnumerable<T> elements, Func<T, TKey> alike)
        where TKey : notnull
    {
        var single = new Dictionary<TKey, T?>();
        foreach (var element in elements)
        {
            if (!single.TryAdd(alike(element), element))
            {
                single[alike(element)] = default;
            }
        }

        return single;
    }
}
