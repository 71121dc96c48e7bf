namespace RoutingRules.Profiles;

/// <summary>What a path through a device is.</summary>
public enum ThroughKind
{
    /// <summary>Signal processing: the output carries what entered.</summary>
    Process,

    /// <summary>A passive split or a straight piece of wire.</summary>
    Passive,

    /// <summary>A selector: the output is itself a source and the entries are its legs.</summary>
    Select,
}
