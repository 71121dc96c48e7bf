using RoutingRules.Model;

namespace RoutingRules.Planning.RunningOrders;

/// <summary>What one show names of the things that are brought: equipment and stands of lines, packs of feeds.</summary>
internal static class KitItems
{
    /// <summary>What a line names.</summary>
    public static IEnumerable<KitItem> Of(Line line)
    {
        if (!string.IsNullOrWhiteSpace(line.Equipment))
        {
            var name = line.Equipment.Trim();
            yield return new KitItem(
                KitKind.Equipment,
                name,
                string.IsNullOrWhiteSpace(line.SuppliedBy) ? null : line.SuppliedBy.Trim(),
                IsWholePair(name) ? 1 : line.Width
            );
        }

        if (!string.IsNullOrWhiteSpace(line.Stand))
        {
            yield return new KitItem(KitKind.Stand, line.Stand.Trim(), null, line.Width);
        }
    }

    /// <summary>The packs of feeds, each once.</summary>
    public static IEnumerable<KitItem> Of(IEnumerable<Feed> feeds) =>
        feeds
            .Where(feed => !string.IsNullOrWhiteSpace(feed.Pack))
            .Select(feed => feed.Pack!.Trim())
            .Distinct(StringComparer.Ordinal)
            .Select(pack => new KitItem(KitKind.Pack, pack, null, 1));

    /// <summary>True for words that mean both halves of a pair, such as <c>two condensers</c>.</summary>
    private static bool IsWholePair(string name) =>
        name.Split(' ').Any(word => word.Equals("two", StringComparison.OrdinalIgnoreCase) || word.Equals("pair", StringComparison.OrdinalIgnoreCase));
}
