namespace RoutingRules.Tests.Promises;

/// <summary>How following a signal upstream ends.</summary>
internal enum TraceEnd
{
    /// <summary>At a real source.</summary>
    Source,

    /// <summary>At a point that nothing feeds.</summary>
    Silent,

    /// <summary>At a point already passed.</summary>
    Loop,
}
