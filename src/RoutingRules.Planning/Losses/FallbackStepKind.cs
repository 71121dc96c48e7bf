namespace RoutingRules.Planning.Losses;

/// <summary>What is done in a step of a plan.</summary>
public enum FallbackStepKind
{
    /// <summary>Pull what is plugged at one run of points and plug it at another.</summary>
    Replug,

    /// <summary>Set a stream, change one, or take one away.</summary>
    Stream,

    /// <summary>Set a route inside a device, or clear points.</summary>
    Route,

    /// <summary>Pull what gives up its place; it stays unplugged.</summary>
    Pull,
}
