using RoutingRules.Model;

namespace RoutingRules.Reports.Sheets.Contents;

/// <summary>One device on the walk of a line check.</summary>
public sealed record LineCheckStop
{
    /// <summary>The zone with its side in the chosen view; null when the device stands in none.</summary>
    public string? Zone { get; init; }

    /// <summary>The device; null for lines that are not placed yet.</summary>
    public string? DeviceLabel { get; init; }

    /// <summary>Its free inputs, group by group, such as <c>in 5-8, 12</c>; empty when there are none.</summary>
    public ValueList<string> Spares { get; init; }

    /// <summary>Its lines, by port group and number.</summary>
    public ValueList<LineCheck> Lines { get; init; }
}
