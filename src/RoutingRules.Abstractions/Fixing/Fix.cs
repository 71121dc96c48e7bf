using RoutingRules.Model;

namespace RoutingRules.Fixing;

/// <summary>One way to mend what a finding is about.</summary>
public sealed record Fix
{
    /// <summary>What it does, as an order to a person: <c>Take out the route to desk/transmit/5</c>.</summary>
    public required string Title { get; init; }

    /// <summary>How far it may be taken without a person.</summary>
    public required FixSafety Safety { get; init; }

    /// <summary>
    /// The edits, one after the other: the pointer of each speaks of the document as the edits before it left it. Empty for a manual fix.
    /// </summary>
    public ValueList<ShowEdit> Edits { get; init; }

    /// <summary>What a person can choose from, each an order in words; empty unless the fix is manual.</summary>
    public ValueList<string> Choices { get; init; }

    /// <summary>What to mind at the rig while the fix is carried out; null when there is nothing.</summary>
    public string? Caution { get; init; }

    /// <summary>A fix that changes the document.</summary>
    /// <exception cref="ArgumentException">There is no edit.</exception>
    public static Fix Of(string title, FixSafety safety, ValueList<ShowEdit> edits, string? caution = null) =>
        edits.IsEmpty || safety == FixSafety.Manual
            ? throw new ArgumentException("A fix that is safe or unsafe has edits, and a manual one has none.", nameof(edits))
            : new Fix
            {
                Title = title,
                Safety = safety,
                Edits = edits,
                Caution = caution,
            };

    /// <summary>A fix that leaves the choice to a person.</summary>
    public static Fix Manual(string title, params ValueList<string> choices) =>
        new()
        {
            Title = title,
            Safety = FixSafety.Manual,
            Choices = choices,
        };
}
