namespace RoutingRules.Rules;

/// <summary>Whether the engine can mend what a rule finds: the best that is offered. A single finding may get less.</summary>
public enum Fixability
{
    /// <summary>No fix is offered.</summary>
    None,

    /// <summary>Choices are shown, a person decides.</summary>
    Manual,

    /// <summary>A fix that may change where signal goes; opt in.</summary>
    Unsafe,

    /// <summary>A fix that keeps what every sink carries by intention.</summary>
    Safe,
}
