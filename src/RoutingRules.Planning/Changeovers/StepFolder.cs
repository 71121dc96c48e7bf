using RoutingRules.Model;
using RoutingRules.Profiles;

namespace RoutingRules.Planning.Changeovers;

/// <summary>Folds steps that one person does in one go into tasks.</summary>
/// <remarks>
/// Steps become one task only where that changes nothing of what is safe about their order: loads that follow one another at one place, pulls that follow
/// one another anywhere, and labels, which nobody hears. Every step is in exactly one task.
/// </remarks>
internal static class StepFolder
{
    /// <param name="steps">The steps of the plan with how they may be folded.</param>
    /// <param name="kindOf">The kind of a device; null for one that neither show knows.</param>
    /// <param name="secondsToLoad">How long a load takes.</param>
    public static ValueList<ChangeoverTask> Fold(
        IReadOnlyList<(ChangeoverStep Step, FoldKind Kind)> steps,
        Func<Id<Device>, DeviceKind?> kindOf,
        int secondsToLoad
    )
    {
        var folded = new List<(FoldKind Kind, List<ChangeoverStep> Steps)>();
        for (var i = 0; i < steps.Count; i++)
        {
            var (step, kind) = steps[i];
            var open = folded.FindLast(task => task.Kind == kind && IsOneGo(task.Steps[^1], step) && Follows(steps, i, task.Steps[^1].Number));
            if (kind == FoldKind.None || open.Steps is null)
            {
                folded.Add((kind, [step]));
            }
            else
            {
                open.Steps.Add(step);
            }
        }

        return folded
            .Select(
                (task, i) =>
                    new ChangeoverTask
                    {
                        Number = i + 1,
                        Place = task.Steps[0].Place,
                        Timing = task.Steps[0].Timing,
                        IsLoad = task.Kind == FoldKind.Load,
                        Text = Text(task.Kind, task.Steps, task.Steps[0].Place is { } place ? kindOf(place) : null),
                        Steps = task.Steps.ToValueList(),
                        Seconds = task.Kind == FoldKind.Load ? secondsToLoad : task.Steps.Sum(step => step.Seconds),
                    }
            )
            .ToValueList();
    }

    private static bool IsOneGo(ChangeoverStep last, ChangeoverStep next) => last.Place == next.Place && last.Timing == next.Timing;

    /// <summary>True when nothing that could matter stands between the last step of a task and the next one.</summary>
    private static bool Follows(IReadOnlyList<(ChangeoverStep Step, FoldKind Kind)> steps, int next, int last)
    {
        var (step, kind) = steps[next];
        return last == next
            || step.Phase == ChangeoverPhase.Labels
            || (kind == FoldKind.Pull && Enumerable.Range(last, next - last).All(i => steps[i].Kind == FoldKind.Pull));
    }

    private static string Text(FoldKind kind, List<ChangeoverStep> steps, DeviceKind? device) =>
        (steps.Count, kind) switch
        {
            (> 1, FoldKind.Load) when steps[0].Timing == ChangeoverTiming.Ahead => "Load this ahead, and nothing else; nobody hears it yet.",
            (> 1, FoldKind.Load) when device == DeviceKind.Console => "Recall the scene of the next act, or set this by hand.",
            (> 1, FoldKind.Load) => "Load the routing of the next act, or set this by hand.",
            (> 1, FoldKind.Pull) => "Pull what the next act does not need.",
            _ => steps[0].Text,
        };
}
