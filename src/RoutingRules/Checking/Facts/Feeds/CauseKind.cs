namespace RoutingRules.Checking.Facts.Feeds;

/// <summary>Where on its way a feed is lost.</summary>
internal enum CauseKind
{
    /// <summary>The bus feeds nothing.</summary>
    SourceUnused,

    /// <summary>A transmit slot carries it, but no stream takes the slot.</summary>
    SlotUnsent,

    /// <summary>No stream reaches a receive slot.</summary>
    SlotUnfed,

    /// <summary>No link joins the jack of a receive slot to slots that could feed it.</summary>
    JackUnlinked,

    /// <summary>No output is cabled to an input.</summary>
    InputUncabled,

    /// <summary>Nothing is routed to a sink.</summary>
    SinkUnrouted,

    /// <summary>A route sets a sink to nothing.</summary>
    SinkCleared,

    /// <summary>Another source is there.</summary>
    OtherSource,

    /// <summary>It reaches another place.</summary>
    OtherPlace,

    /// <summary>Anything else, said in words.</summary>
    Said,
}
