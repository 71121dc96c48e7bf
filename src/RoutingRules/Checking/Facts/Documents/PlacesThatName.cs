using RoutingRules.Rules;

namespace RoutingRules.Checking.Facts.Documents;

/// <summary>How much of a show names other parts of it, for rules that look at names wherever they stand.</summary>
internal static class PlacesThatName
{
    /// <summary>Routes, streams, cables and links.</summary>
    public static int Connections(RuleContext context) => context.Routes.Count + context.Streams.Count + context.Cables.Count + context.Links.Count;

    /// <summary>All that names points.</summary>
    public static int Points(RuleContext context) =>
        Connections(context)
        + context.Feeds.Count
        + context.Lines.Count
        + context.InputSettings.Count
        + context.Labels.Count
        + context.Rig.Unavailable.Count
        + context.Rig.Reserved.Count;

    /// <summary>What names zones, clocks or devices without naming points.</summary>
    public static int Others(RuleContext context)
    {
        var count = context.Rig.Clocks.Count;
        foreach (var zone in context.Rig.Zones)
        {
            count += zone.Near.IsEmpty ? 0 : 1;
        }

        foreach (var network in context.Rig.Networks)
        {
            count += network.Clock is null ? 0 : 1;
        }

        foreach (var device in context.Rig.Devices)
        {
            count += device.Zone is null ? 0 : 1;
        }

        return count;
    }
}
