namespace RoutingRules.Tracing;

/// <summary>Where the way back from a point ends.</summary>
public enum TraceStart
{
    /// <summary>A bus or another source inside a device.</summary>
    Source,

    /// <summary>An input without a cable in the document: the signal is what is plugged in there.</summary>
    OpenInput,

    /// <summary>The output of a selector.</summary>
    Selector,

    /// <summary>A receive slot at which no stream and no multicore arrives; silent.</summary>
    EmptySlot,

    /// <summary>A sink, output or transmit slot to which nothing is routed; silent.</summary>
    NothingRouted,

    /// <summary>A sink that a route of the document clears; silent on purpose.</summary>
    Cleared,

    /// <summary>A ring of points that feed each other; no signal enters it.</summary>
    Loop,

    /// <summary>A network jack, which carries streams but is no audio channel.</summary>
    Jack,
}
