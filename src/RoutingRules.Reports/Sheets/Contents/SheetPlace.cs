using System.Globalization;
using RoutingRules.Model;
using RoutingRules.Profiles;

namespace RoutingRules.Reports.Sheets.Contents;

/// <summary>A point with the words that find it on the device.</summary>
public sealed record SheetPlace
{
    /// <summary>The device.</summary>
    public required Id<Device> Device { get; init; }

    /// <summary>What is written on the device, or else its id.</summary>
    public required string DeviceLabel { get; init; }

    /// <summary>The port group.</summary>
    public required Id<PortGroup> Group { get; init; }

    /// <summary>What people call a point of the group, such as input; null for the id of the group.</summary>
    public string? GroupWord { get; init; }

    /// <summary>The point for who stands at the device, such as input B4.</summary>
    public string Here => $"{GroupWord ?? Group.Value} {Mark}";

    /// <summary>The number in the group, from 1.</summary>
    public required int Number { get; init; }

    /// <summary>What the panel prints there; null when it prints the number.</summary>
    public string? Panel { get; init; }

    /// <summary>The connector of the group the point sits on, from 1; 0 when each point has its own.</summary>
    public int Connector { get; init; }

    /// <summary>Which channel of that connector, from 1; 0 when each point has its own.</summary>
    public int ConnectorChannel { get; init; }

    /// <summary>What to look for on the panel: the printed text or the number.</summary>
    public string Mark => Panel ?? Number.ToString(CultureInfo.InvariantCulture);

    /// <summary>For example <c>SR box out 3</c>.</summary>
    public override string ToString() => $"{DeviceLabel} {Here}";
}
