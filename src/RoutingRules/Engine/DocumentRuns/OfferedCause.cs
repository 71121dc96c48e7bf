using RoutingRules.Diagnosis;
using RoutingRules.Fixing;
using RoutingRules.Model;

namespace RoutingRules.Engine.DocumentRuns;

/// <summary>A cause with what its repair does to the text of the document.</summary>
public sealed record OfferedCause
{
    /// <summary>Its number, from 1, by which <c>fix --cause</c> takes it.</summary>
    public required int Number { get; init; }

    /// <summary>The cause.</summary>
    public required Cause Cause { get; init; }

    /// <summary>The repair.</summary>
    public required OfferedFix Repair { get; init; }

    /// <summary>Repairs that would do as well, in the order of <see cref="Cause.Alternatives"/>.</summary>
    public ValueList<OfferedFix> Alternatives { get; init; }

    /// <summary>A cause for a text.</summary>
    /// <param name="cause">The cause.</param>
    /// <param name="number">Its number.</param>
    /// <param name="show">The show of the text; null when there is no text that the repairs would change.</param>
    /// <param name="text">The text.</param>
    internal static OfferedCause Of(Cause cause, int number, Show? show, ReadOnlySpan<byte> text)
    {
        var alternatives = new List<OfferedFix>();
        foreach (var fix in cause.Alternatives)
        {
            alternatives.Add(Of(fix, show, text));
        }

        return new OfferedCause
        {
            Number = number,
            Cause = cause,
            Repair = Of(cause.Repair, show, text),
            Alternatives = alternatives.ToValueList(),
        };
    }

    private static OfferedFix Of(Fix fix, Show? show, ReadOnlySpan<byte> text) => show is null ? new OfferedFix { Fix = fix } : OfferedFix.Of(fix, show, text);
}
