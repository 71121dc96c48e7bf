using System.Text.Json.Nodes;
using FsCheck;
using FsCheck.Xunit;
using RoutingRules.Documents;
using RoutingRules.Fixing;
using RoutingRules.Model;
using RoutingRules.Planning;
using RoutingRules.Planning.Changeovers;
using RoutingRules.Profiles;
using RoutingRules.Testing;

namespace RoutingRules.Tests.Promises;

/// <summary>Comparisons say just what differs, and changeovers never put on an open output what neither act has there.</summary>
[Trait("Speed", "slow")]
public sealed class ChangePromises
{
    [Property(MaxTest = Promise.Cases)]
    public Property A_patch_made_of_two_documents_turns_one_into_the_other() =>
        Promise.Of(
            ShowPair.Strangers(),
            pair => pair.After,
            pair =>
            {
                var before = JsonNode.Parse(ShowWriter.ToUtf8(pair.Before));
                var after = JsonNode.Parse(ShowWriter.ToUtf8(pair.After));
                var patch = JsonPatch.Between(before, after);
                return !JsonNode.DeepEquals(JsonPatch.Parse(patch.ToUtf8()).Apply(before), after) ? "The patch leads elsewhere."
                    : !JsonPatch.Between(after, after).Operations.IsEmpty ? "A document differs from itself."
                    : null;
            }
        );

    [Property(MaxTest = Promise.Cases / 4)]
    public Property A_show_does_not_differ_from_itself() =>
        Promise.Of(
            ShowArbitraries.Messy(),
            show =>
            {
                var same = Promise.Engine.Compare(show, show);
                var plan = Promise.Engine.PlanChangeover(show, show);
                return !same.IsEmpty
                    || !same.Sinks.IsEmpty
                    || !same.Demands.IsEmpty
                    || !same.Hazards.IsEmpty
                    || !same.NewFindings.IsEmpty
                    || !same.ResolvedFindings.IsEmpty
                        ? $"{same}"
                    : !plan.Steps.IsEmpty ? $"A step: {plan.Steps[0].Text}"
                    : null;
            }
        );

    [Property(MaxTest = Promise.Cases / 4)]
    public Property Just_the_sinks_that_carry_something_else_are_listed() =>
        Promise.Of(
            ShowPair.OneRig(),
            pair => pair.After,
            pair =>
            {
                var comparison = Promise.Engine.Compare(pair.Before, pair.After);
                var listed = comparison
                    .Sinks.SelectMany(change =>
                        Enumerable.Range(0, change.At.Width).Select(i => (At: change.At[i], Before: change.Before?[i], After: change.After?[i]))
                    )
                    .ToDictionary(change => change.At);
                var old = new NaiveTracer(pair.Before);
                var now = new NaiveTracer(pair.After);
                foreach (var at in Points(pair.After, PortKind.Output, PortKind.Sink))
                {
                    var (before, after) = (old.Source(at), now.Source(at));
                    if (listed.TryGetValue(at, out var change) ? change.Before != before || change.After != after : before != after)
                    {
                        return $"{at} carries {before} before and {after} after; listed is {(listed.ContainsKey(at) ? change.ToString() : "nothing")}.";
                    }
                }

                return comparison.IsEmpty == ShowWriter.ToUtf8(pair.Before).AsSpan().SequenceEqual(ShowWriter.ToUtf8(pair.After)) ? null : "IsEmpty is wrong.";
            }
        );

    [Property(MaxTest = Promise.Cases / 4)]
    public Property An_open_output_never_carries_what_neither_act_has_there() =>
        Promise.Of(ShowPair.OneRig(), pair => pair.After, pair => Broken(pair.Before, pair.After));

    [Property(MaxTest = Promise.Cases / 10)]
    public Property Not_even_between_shows_that_have_nothing_in_common() =>
        Promise.Of(ShowPair.Strangers(), pair => pair.After, pair => Broken(pair.Before, pair.After));

    [Property(MaxTest = Promise.Cases / 10)]
    public Property Folded_steps_are_the_whole_and_in_an_order_that_is_as_safe() =>
        Promise.Of(ShowPair.OneRig(), pair => pair.After, pair => Torn(Promise.Engine.PlanChangeover(pair.Before, pair.After)));

    private static string? Torn(ChangeoverPlan plan)
    {
        var folded = plan.Tasks.SelectMany(task => task.Steps).ToList();
        if (
            !folded.OrderBy(step => step.Number).SequenceEqual(plan.Steps)
            || !plan.Cards.SelectMany(card => card.Tasks).OrderBy(t => t.Number).SequenceEqual(plan.Tasks)
        )
        {
            return "A step is lost or told twice.";
        }

        foreach (var task in plan.Tasks)
        {
            if (task.Steps.Any(step => step.Place != task.Place || step.Timing != task.Timing))
            {
                return $"Task {task.Number} is not one place's work at one time.";
            }

            // What goes out of its turn must be what nobody hears and nothing waits for: a pull among pulls, or labels.
            foreach (var step in task.Steps.Where(step => step.Phase != ChangeoverPhase.Labels))
            {
                var before = folded.TakeWhile(other => other != step).ToHashSet();
                var passed = plan.Steps.Take(step.Number - 1).Where(other => !before.Contains(other) && other.Phase != ChangeoverPhase.Labels);
                if (passed.Any(other => !other.Text.StartsWith("Pull ", StringComparison.Ordinal) || !step.Text.StartsWith("Pull ", StringComparison.Ordinal)))
                {
                    return $"Step {step.Number} comes before one that it must not pass.";
                }
            }
        }

        return null;
    }

    /// <summary>Simulates the steps with a tracer of its own.</summary>
    private static string? Broken(Show before, Show after)
    {
        var plan = Promise.Engine.PlanChangeover(before, after);
        if (plan.States.Count != plan.Steps.Count + 1 || plan.States[^1] != after)
        {
            return "The states do not lead from one show to the other.";
        }

        var sounds = plan.States.Select(Heard).ToList();
        var muted = new HashSet<Point>();
        var opened = new HashSet<Point>();
        for (var i = 0; i < plan.Steps.Count; i++)
        {
            var step = plan.Steps[i];
            var (was, becomes) = (sounds[i], sounds[i + 1]);
            if (step.Number != i + 1 || (i > 0 && step.Phase < plan.Steps[i - 1].Phase))
            {
                return $"Step {i + 1} is out of order.";
            }

            var points = step.Points.SelectMany(run => Enumerable.Range(0, run.Width).Select(at => run[at])).ToList();
            if (step.Phase == ChangeoverPhase.Mute && !points.TrueForAll(muted.Add))
            {
                return $"Step {step.Number} mutes something twice.";
            }

            if (step.Phase == ChangeoverPhase.Open && !points.TrueForAll(at => muted.Remove(at) && opened.Add(at)))
            {
                return $"Step {step.Number} opens something that is open.";
            }

            if (
                step.Phase is ChangeoverPhase.PhantomOff or ChangeoverPhase.PhantomOn or ChangeoverPhase.Patch
                && plan.States[i] == plan.States[i + 1]
                && i + 1 < plan.Steps.Count
            )
            {
                return $"Step {step.Number} changes nothing: {step.Text}";
            }

            foreach (var (at, source) in becomes.Carried.Where(pair => becomes.Ends.Contains(pair.Key) && !muted.Contains(pair.Key)))
            {
                if (was.Carried.GetValueOrDefault(at) != source)
                {
                    return $"Step {step.Number} ({step.Text}) changes what {at} carries, which is open.";
                }

                if (sounds[0].Carried.GetValueOrDefault(at) != source && sounds[^1].Carried.GetValueOrDefault(at) != source)
                {
                    return $"After step {step.Number} ({step.Text}) {at} carries {source}, which neither show has there.";
                }
            }
        }

        return muted.FirstOrDefault(at => sounds[^1].Carried.ContainsKey(at)) is { Number: > 0 } left ? $"{left} is never opened." : null;
    }

    /// <summary>What outputs and cabled inputs carry, and which of them feed nothing more in the document.</summary>
    private static (Dictionary<Point, Point> Carried, HashSet<Point> Ends) Heard(Show show)
    {
        var tracer = new NaiveTracer(show);
        var carried = new Dictionary<Point, Point>();
        var feeding = Points(show, [.. Enum.GetValues<PortKind>().Except([PortKind.Network])]).SelectMany(at => tracer.Trace(at).Passed.Skip(1)).ToHashSet();
        foreach (var at in Points(show, PortKind.Output, PortKind.Input))
        {
            if (
                tracer.Source(at) is { } source
                && (source != at || Promise.Resolve(show).Graph.GroupOf(Promise.Resolve(show).Graph.Find(at)).Kind == PortKind.Output)
            )
            {
                carried.Add(at, source);
            }
        }

        return (carried, [.. carried.Keys.Where(at => !feeding.Contains(at))]);
    }

    private static IEnumerable<Point> Points(Show show, params PortKind[] kinds) =>
        from device in Promise.Resolve(show).Devices
        from @group in (IEnumerable<RoutingRules.Resolving.GroupNode>)device.Groups
        where kinds.Contains(@group.Kind)
        from i in Enumerable.Range(1, @group.Count)
        select new Point(device.Id, @group.Id, i);
}
