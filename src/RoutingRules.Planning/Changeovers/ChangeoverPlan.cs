using RoutingRules.Model;

namespace RoutingRules.Planning.Changeovers;

/// <summary>The steps from one show to the next in a safe order.</summary>
/// <remarks>
/// After no step does an output that is open carry a source that neither show has there; <see cref="States"/> lets anybody check it. Immutable.
/// </remarks>
public sealed record ChangeoverPlan
{
    /// <summary>The steps, in the order in which they are done.</summary>
    public required ValueList<ChangeoverStep> Steps { get; init; }

    /// <summary>The same steps folded: what one person does in one go is one task. Every step is in exactly one.</summary>
    public ValueList<ChangeoverTask> Tasks { get; init; }

    /// <summary>The same tasks and steps by place: devices in rig order, then what is everywhere.</summary>
    public required ValueList<ChangeoverCard> Cards { get; init; }

    /// <summary>
    /// The rig and its patch before the first step and after each one: one more than <see cref="Steps"/>. The last is the second show. Feeds and lines are
    /// those of the second show throughout; devices go by their ids in it.
    /// </summary>
    public required ValueList<Show> States { get; init; }

    /// <summary>
    /// The number of the last step after which the act before can still be restored at once, by opening what was muted; 0 when that is before the first
    /// step. After it, finish.
    /// </summary>
    public required int RollbackAfter { get; init; }

    /// <summary>
    /// What the plan could not take apart into steps, and where it keeps phantom power off against the second show, one sentence each; empty in nearly all
    /// cases.
    /// </summary>
    public ValueList<string> Remarks { get; init; }

    /// <summary>About how long the steps of one timing take when there is one person at each place, in seconds: the longest card.</summary>
    public int Seconds(ChangeoverTiming timing) => Cards.IsEmpty ? 0 : Cards.Max(card => card.Seconds(timing));

    /// <summary>About how long it takes from the last note of the act before to the end of the line check, with one person at each place, in seconds.</summary>
    public int SecondsAfterTheActBefore =>
        Seconds(ChangeoverTiming.ClearStage) + Seconds(ChangeoverTiming.BeforeLineCheck) + Seconds(ChangeoverTiming.LineCheck);
}
