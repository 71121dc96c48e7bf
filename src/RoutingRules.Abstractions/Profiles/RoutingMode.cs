namespace RoutingRules.Profiles;

/// <summary>How freely sinks take sources.</summary>
public enum RoutingMode
{
    /// <summary>Any sink takes any source.</summary>
    Free,

    /// <summary>Whole blocks only.</summary>
    Block,

    /// <summary>Sink i always takes source i.</summary>
    Fixed,
}
