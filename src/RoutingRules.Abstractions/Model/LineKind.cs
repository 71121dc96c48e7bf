namespace RoutingRules.Model;

/// <summary>What kind of signal a stage line carries.</summary>
public enum LineKind
{
    /// <summary>Microphone level.</summary>
    Microphone,

    /// <summary>Line level.</summary>
    Line,
}
