namespace RoutingRules.Rules;

/// <summary>How serious a finding is; ordered, the worst last.</summary>
public enum Severity
{
    /// <summary>Worth knowing.</summary>
    Note,

    /// <summary>Likely to cause trouble.</summary>
    Warning,

    /// <summary>The show cannot run as written.</summary>
    Error,
}
