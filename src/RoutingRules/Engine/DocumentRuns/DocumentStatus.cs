namespace RoutingRules.Engine.DocumentRuns;

/// <summary>What a check came to, in one word.</summary>
public enum DocumentStatus
{
    /// <summary>Nothing was found beyond what is waived or known, and every rule could decide.</summary>
    Clean,

    /// <summary>At least one finding that is neither waived nor known, of whatever severity.</summary>
    Findings,

    /// <summary>No finding, but some rule could not decide about something.</summary>
    Undecided,

    /// <summary>The document could not be read in full, so no rule was run on it.</summary>
    Unreadable,
}
