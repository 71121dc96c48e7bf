using RoutingRules.Model;

namespace RoutingRules.Reports.Sheets.Contents;

/// <summary>A device on a supply; a device on several is there once for each.</summary>
public sealed record SheetPowered
{
    /// <summary>The supply; null when the document names none for the device.</summary>
    public string? Supply { get; init; }

    /// <summary>The device.</summary>
    public required Id<Device> Id { get; init; }

    /// <summary>What is written on it, or else its id.</summary>
    public required string Device { get; init; }

    /// <summary>The zone with its side in the chosen view; null when the device stands in none.</summary>
    public string? Zone { get; init; }

    /// <summary>The other supplies of the device.</summary>
    public ValueList<string> AlsoOn { get; init; }

    /// <summary>How it differs from the older revision; null when it does not, or when there is none.</summary>
    public SheetChange? Change { get; init; }
}
