namespace RoutingRules.Fixing;

/// <summary>How far a fix may be taken without a person.</summary>
public enum FixSafety
{
    /// <summary>Choices for a person; there is nothing to apply.</summary>
    Manual,

    /// <summary>May change where signal goes or what somebody meant; applied on request only.</summary>
    Unsafe,

    /// <summary>Outputs and channels go on carrying what they carry.</summary>
    Safe,
}
