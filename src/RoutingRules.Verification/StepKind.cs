namespace RoutingRules.Verification;

/// <summary>How signal comes to a point.</summary>
internal enum StepKind
{
    /// <summary>A route of the patch.</summary>
    Route,

    /// <summary>A factory route nothing overrides.</summary>
    Factory,

    /// <summary>A fixed position.</summary>
    Fixed,

    /// <summary>Processing or straight wire inside a device.</summary>
    Through,

    /// <summary>A cable.</summary>
    Cable,

    /// <summary>A stream.</summary>
    Stream,

    /// <summary>A link that is itself the stream, between the slots of a digital multicore.</summary>
    Carrier,
}
