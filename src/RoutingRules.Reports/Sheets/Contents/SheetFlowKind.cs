namespace RoutingRules.Reports.Sheets.Contents;

/// <summary>What stands at a place of a drawing.</summary>
public enum SheetFlowKind
{
    /// <summary>Where a signal is born: a bus, an input, a player.</summary>
    Source,

    /// <summary>A channel of a stream or of a link that carries channels.</summary>
    Slot,

    /// <summary>A connector.</summary>
    Connector,

    /// <summary>A console channel or track.</summary>
    Channel,

    /// <summary>A whole device.</summary>
    Device,

    /// <summary>A whole stream, link or set of cables.</summary>
    Bundle,
}
