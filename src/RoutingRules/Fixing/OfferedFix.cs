using RoutingRules.Model;

namespace RoutingRules.Fixing;

/// <summary>A fix with what it does to the text of a document.</summary>
public sealed record OfferedFix
{
    /// <summary>The fix.</summary>
    public required Fix Fix { get; init; }

    /// <summary>The change as a JSON Patch; null for a manual fix.</summary>
    public JsonPatch? Patch { get; init; }

    /// <summary>The change of the text; null for a manual fix, and when the document would have to be written anew.</summary>
    public TextChange? Change { get; init; }

    /// <summary>A fix for a text.</summary>
    /// <param name="fix">The fix.</param>
    /// <param name="show">The show of the text.</param>
    /// <param name="utf8Json">The text.</param>
    /// <exception cref="ArgumentException">An edit of the fix does not fit the show.</exception>
    public static OfferedFix Of(Fix fix, Show show, ReadOnlySpan<byte> utf8Json)
    {
        ArgumentNullException.ThrowIfNull(fix);
        ArgumentNullException.ThrowIfNull(show);
        if (fix.Edits.IsEmpty)
        {
            return new OfferedFix { Fix = fix };
        }

        var edited = show;
        foreach (var edit in fix.Edits)
        {
            edited = edit.Apply(edited) ?? throw new ArgumentException($"The edit at {edit.Pointer} does not fit the show.", nameof(fix));
        }

        var text = ShowText.Edit(utf8Json, fix.Edits, edited);
        return new OfferedFix
        {
            Fix = fix,
            Patch = text.Patch,
            Change = text.IsRewritten ? null : TextChange.Between(utf8Json, text.Utf8.Span),
        };
    }
}
