namespace RoutingRules.Reports.Sheets.Contents;

/// <summary>A part of the sheets, in the order of printing.</summary>
public enum SheetSection
{
    /// <summary>What is missing, what has changed, and the devices.</summary>
    Overview,

    /// <summary>The drawing of all devices and what runs between them.</summary>
    Flow,

    /// <summary>The list of lines by channel.</summary>
    Inputs,

    /// <summary>The list of outputs by device.</summary>
    Outputs,

    /// <summary>A page for each device.</summary>
    Devices,

    /// <summary>The line check by channel.</summary>
    Lines,

    /// <summary>The line check in walking order.</summary>
    Walk,

    /// <summary>The check of the mixes.</summary>
    Mixes,

    /// <summary>Who listens to which mix on which pack.</summary>
    Packs,

    /// <summary>Streams, links, clocks and latency.</summary>
    Network,

    /// <summary>What is loaded into the truck: microphones, direct boxes, stands, cables, packs, with spares.</summary>
    Kit,

    /// <summary>Each supply with the devices on it.</summary>
    Power,
}
