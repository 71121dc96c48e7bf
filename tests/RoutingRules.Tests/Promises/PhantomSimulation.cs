using RoutingRules.Model;
using RoutingRules.Planning.Changeovers;
using RoutingRules.Profiles;

namespace RoutingRules.Tests.Promises;

/// <summary>Carries out a changeover by what its steps say, with phantom power and plugs as they would be on the stage.</summary>
internal sealed class PhantomSimulation
{
    private readonly Show before;
    private readonly Show after;
    private readonly ChangeoverPlan plan;
    private readonly Dictionary<Point, bool?> power = [];
    private readonly Dictionary<Point, Line> plugged = [];
    private readonly HashSet<Point> muted = [];
    private readonly HashSet<Point> wrongFromTheStart = [];
    private readonly List<(Line Line, Point At)> placesAfter;
    private bool isOnStage;

    private PhantomSimulation(Show before, Show after, ChangeoverPlan plan)
    {
        (this.before, this.after, this.plan) = (before, after, plan);
        placesAfter = [.. PluggedLines.Of(after)];
        foreach (var at in Inputs(before).Concat(Inputs(after)).Distinct())
        {
            power.TryAdd(at, Initial(at));
        }

        foreach (var (line, at) in PluggedLines.Of(before).Where(place => !IsCabled(before, place.At)))
        {
            plugged[at] = line;
        }

        wrongFromTheStart.UnionWith(Wrong(before).Select(wrong => wrong.Supply));
    }

    /// <summary>What is wrong with a plan; null when nothing is.</summary>
    public static string? Broken(Show before, Show after, ChangeoverPlan plan) => new PhantomSimulation(before, after, plan).Run();

    private string? Run()
    {
        for (var i = 0; i < plan.Steps.Count; i++)
        {
            var step = plan.Steps[i];
            if (Carry(step, plan.States[i], plan.States[i + 1]) is { } problem)
            {
                return $"Step {step.Number} ({step.Text}): {problem}";
            }

            if (step.Phase >= ChangeoverPhase.Stage)
            {
                // What the first show has on against its own line goes off before any plug moves, unless the second has it on at the same plug as well.
                isOnStage = true;
                wrongFromTheStart.RemoveWhere(supply =>
                    !plugged.Any(pair =>
                        Supplies(pair.Key, plan.States[i]).Contains(supply)
                        && Staying(pair.Key, pair.Value) is { } line
                        && (
                            line.Phantom != PhantomNeed.Forbidden
                            || after.Patch.Inputs.FirstOrDefault(input => input.Phantom is not null && IsIn(input.At, supply))?.Phantom == true
                        )
                    )
                );
            }

            if (step.Phase >= ChangeoverPhase.PhantomOn)
            {
                Stay();
            }

            foreach (var (line, supply) in Wrong(plan.States[i + 1]))
            {
                if (!wrongFromTheStart.Contains(supply))
                {
                    return $"After step {step.Number} ({step.Text}) {line.Id} stands where {supply} has phantom power "
                        + $"{(power[supply] is null ? "perhaps" : "surely")} on.";
                }
            }
        }

        return null;
    }

    /// <summary>What stays plugged is what the second show says of it, once all plugs are in.</summary>
    private void Stay()
    {
        foreach (var at in plugged.Keys.ToList())
        {
            plugged[at] = Staying(at, plugged[at]) ?? plugged[at];
        }
    }

    /// <summary>What the second show says of a line that is where it has it; null for one that it has elsewhere or not at all.</summary>
    private Line? Staying(Point at, Line line) => placesAfter.FirstOrDefault(place => place.At == at && place.Line.Id == line.Id).Line;

    private string? Carry(ChangeoverStep step, Show state, Show next)
    {
        var points = step.Points.SelectMany(run => Enumerable.Range(0, run.Width).Select(at => run[at])).ToList();
        if (step.Phase == ChangeoverPhase.Mute)
        {
            muted.UnionWith(points);
            return null;
        }

        if (step.Phase == ChangeoverPhase.Open)
        {
            muted.ExceptWith(points);
            return null;
        }

        if (step.Phase is ChangeoverPhase.PhantomOff or ChangeoverPhase.PhantomOn || step.Text.StartsWith("Check that phantom", StringComparison.Ordinal))
        {
            points.ForEach(at => power[at] = step.Phase == ChangeoverPhase.PhantomOn);
            return points.Select(at => Unmuted(at, state)).FirstOrDefault(at => at is not null) is { } heard ? $"{heard} is open." : null;
        }

        if (StepWords.Come().IsMatch(step.Text) && step.Place is { } device)
        {
            foreach (var at in Inputs(after).Where(at => at.Device == device))
            {
                power[at] = null;
            }

            return null;
        }

        var moves = new List<(PointRange At, string? Comes)>();
        if (StepWords.Swap().Match(step.Text) is { Success: true } swap)
        {
            moves.Add((PointRange.Parse(swap.Groups[1].Value), null));
            moves.Add((PointRange.Parse(swap.Groups[1].Value), swap.Groups[2].Value));
        }
        else if (StepWords.Move().Match(step.Text) is { Success: true } move)
        {
            moves.Add((PointRange.Parse(move.Groups[2].Value), null));
            moves.Add((PointRange.Parse(move.Groups[3].Value), move.Groups[1].Value));
        }
        else if (StepWords.Pull().Match(step.Text) is { Success: true } pull)
        {
            moves.Add((PointRange.Parse(pull.Groups[1].Value), null));
        }
        else if (StepWords.Plug().Match(step.Text) is { Success: true } plug)
        {
            moves.Add((PointRange.Parse(plug.Groups[2].Value), plug.Groups[1].Value));
        }

        return moves.Where(move => IsInput(move.At)).Select(move => Replug(move.At, move.Comes, state, next)).FirstOrDefault(problem => problem is not null);
    }

    private string? Replug(PointRange range, string? comes, Show state, Show next)
    {
        for (var i = 0; i < range.Width; i++)
        {
            var at = range[i];
            var line = comes is null ? null : after.Lines.FirstOrDefault(line => line.Id.Value == comes) ?? before.Lines.First(line => line.Id.Value == comes);
            foreach (var supply in Supplies(at, state).Concat(Supplies(at, next)).Distinct())
            {
                if (power[supply] == true || (power[supply] is null && line is { Phantom: not PhantomNeed.Either }))
                {
                    return $"{supply} {(power[supply] is null ? "may have" : "has")} phantom power on when the plug at {at} moves.";
                }
            }

            if (Unmuted(at, state) is { } heard)
            {
                return $"{heard} is open when the plug at {at} moves.";
            }

            if (line is null)
            {
                plugged.Remove(at);
            }
            else
            {
                plugged[at] = line;
            }
        }

        return null;
    }

    /// <summary>
    /// An open output at the end of all, or an open console channel, that carries what comes in at a point or at another leg of the same line; null for none.
    /// </summary>
    private Point? Unmuted(Point at, Show state)
    {
        var tracer = new NaiveTracer(state);
        var sources = new HashSet<Point> { at };
        if (tracer.Exists(Range(at)) && tracer.Source(at) is { } origin)
        {
            sources.Add(origin);
        }

        foreach (var line in plugged.Where(pair => sources.Contains(pair.Key) || Supplies(pair.Key, state).Contains(at)).Select(pair => pair.Value).ToList())
        {
            sources.UnionWith(plugged.Where(pair => pair.Value.Id == line.Id).Select(pair => pair.Key));
        }

        var consoles = Promise.Resolve(state).Devices.Where(device => device.Profile.Kind == DeviceKind.Console).Select(device => device.Id).ToHashSet();
        foreach (var sink in tracer.Points(PortKind.Sink).Where(sink => consoles.Contains(sink.Device)))
        {
            if (!muted.Contains(sink) && tracer.Source(sink) is { } source && sources.Contains(source))
            {
                return sink;
            }
        }

        return null;
    }

    /// <summary>Lines that must not get phantom power, where it is or may be on.</summary>
    private IEnumerable<(Line Line, Point Supply)> Wrong(Show state) =>
        from pair in plugged.ToList()
        where pair.Value.Phantom == PhantomNeed.Forbidden || (isOnStage && Staying(pair.Key, pair.Value)?.Phantom == PhantomNeed.Forbidden)
        from leg in plugged.Where(other => other.Value.Id == pair.Value.Id).Select(other => other.Key).ToList()
        from supply in Supplies(leg, state)
        where power[supply] != false
        select (pair.Value, supply);

    /// <summary>What an input is at before anything is done: what was said, or else what the line there needs; null where nobody can know.</summary>
    private bool? Initial(Point at)
    {
        foreach (var input in before.Patch.Inputs)
        {
            if (input.Phantom is { } said && IsIn(input.At, at))
            {
                return said;
            }
        }

        var here = PluggedLines.Of(before).Where(place => Supplies(place.At, before).Contains(at)).Select(place => place.Line).ToList();
        return here.Exists(line =>
                line.Phantom == PhantomNeed.Required
                && !PluggedLines
                    .Of(before)
                    .Where(place => place.Line == line)
                    .SelectMany(place => Supplies(place.At, before))
                    .Any(other => before.Patch.Inputs.FirstOrDefault(input => input.Phantom is not null && IsIn(input.At, other))?.Phantom == true)
            )
                ? true
            : here.Exists(line => line.Phantom == PhantomNeed.Forbidden) ? false
            : null;
    }

    /// <summary>
    /// The inputs that can power what is plugged in at a point: those from which the way up over cables and passive paths for phantom power meets it.
    /// </summary>
    private IEnumerable<Point> Supplies(Point entry, Show state)
    {
        var tracer = new NaiveTracer(state);
        foreach (var input in Inputs(state))
        {
            var passed = tracer.Trace(input).Passed;
            var at = passed.IndexOf(entry);
            if (at >= 0 && Enumerable.Range(0, at).All(i => IsCopper(passed[i], passed[i + 1], state)))
            {
                yield return input;
            }
        }
    }

    private static bool IsCopper(Point at, Point from, Show state) =>
        at.Device != from.Device
            ? state.Rig.Cables.Any(cable => IsIn(cable.To, at) && IsIn(cable.From, from))
            : ProfileOf(state, at.Device)!
                .Through.Any(path => path is { Kind: ThroughKind.Passive, Phantom: true } && path.From == from.Group && path.To == at.Group);

    /// <summary>Inputs that can supply phantom power, or of which somebody says that they do.</summary>
    private IEnumerable<Point> Inputs(Show show) =>
        new NaiveTracer(show)
            .Points(PortKind.Input)
            .Where(at =>
                ProfileOf(show, at.Device)!.PortGroups.First(group => group.Id == at.Group).Phantom
                || before.Patch.Inputs.Concat(after.Patch.Inputs).Any(input => input.Phantom is not null && IsIn(input.At, at))
            );

    private bool IsInput(PointRange range) =>
        new[] { before, after }.Any(show => ProfileOf(show, range.Device)?.PortGroups.FirstOrDefault(group => group.Id == range.Group)?.Kind == PortKind.Input);

    private static DeviceProfile? ProfileOf(Show show, Id<Device> device) =>
        show.Rig.Profiles.FirstOrDefault(profile => profile.Id == show.Rig.Devices.FirstOrDefault(other => other.Id == device)?.Profile);

    private static bool IsCabled(Show show, Point at) => show.Rig.Cables.Any(cable => IsIn(cable.To, at) && cable.From.Width == cable.To.Width);

    private static bool IsIn(PointRange range, Point at) =>
        range.Device == at.Device && range.Group == at.Group && range.First <= at.Number && at.Number <= range.Last;

    private static PointRange Range(Point at) => new(at.Device, at.Group, at.Number, at.Number);
}
