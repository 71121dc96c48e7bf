using RoutingRules.Model;

namespace RoutingRules.Reports.Lists;

/// <summary>Feeds and lines alike.</summary>
internal static class ListElements
{
    public static IReadOnlyList<object> Of(Show show, IntentList list) => list == IntentList.Feeds ? [.. show.Feeds] : [.. show.Lines];

    public static string IdOf(object element) => element is Feed feed ? feed.Id.Value : ((Line)element).Id.Value;

    public static string? NameOf(object element) => element is Feed feed ? feed.Name : ((Line)element).Name;

    /// <summary>What one is called, for messages.</summary>
    public static string Word(IntentList list) => list == IntentList.Feeds ? "feed" : "line";
}
