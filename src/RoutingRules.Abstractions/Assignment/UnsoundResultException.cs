using RoutingRules.Model;

namespace RoutingRules.Assignment;

/// <summary>What was computed breaks a rule of the assignment, as an independent look at it found: a mistake of the engine, never of the show.</summary>
public sealed class UnsoundResultException : InvalidOperationException
{
    /// <summary>Says what is wrong.</summary>
    /// <param name="faults">What is wrong with the result, each as a sentence; one or more.</param>
    public UnsoundResultException(ValueList<string> faults)
        : base(
            "The computed patch was thrown away because it breaks a rule: "
                + $"{(faults.IsEmpty ? "unknown" : faults[0])}{(faults.Count > 1 ? FormattableString.Invariant($" ({faults.Count - 1} more.)") : "")} "
                + "This is a mistake of the engine; please report it with the show and the options."
        ) => Faults = faults;

    /// <summary>What is wrong with the result, each as a sentence.</summary>
    public ValueList<string> Faults { get; }
}
