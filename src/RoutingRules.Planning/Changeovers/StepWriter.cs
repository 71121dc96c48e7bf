using RoutingRules.Model;
using RoutingRules.Planning.Comparing;
using RoutingRules.Profiles;
using RoutingRules.Resolving;
using RoutingRules.Signal;

namespace RoutingRules.Planning.Changeovers;

/// <summary>Puts muting, checking and opening around the moves, and numbers everything.</summary>
internal sealed class StepWriter(
    ShowComparer shows,
    RigState first,
    RigState last,
    List<(PlannedMove Move, RigState State)> ahead,
    List<(PlannedMove Move, RigState State)> during,
    HashSet<Point> touched,
    Pace pace
)
{
    private readonly List<(ChangeoverStep Step, FoldKind Kind)> steps = [];
    private readonly List<Show> states = [first.Show];
    private readonly SoundGroups groupsOf = new(shows);

    public ChangeoverPlan Write(ValueList<string> remarks)
    {
        AddAll(ahead);

        var muted = touched.Where(IsMutable).ToList();
        foreach (var group in groupsOf.Of(muted))
        {
            Add(Mute(group), null);
        }

        var rollback = steps.Count;
        var stage = during.Where(entry => entry.Move.Phase <= ChangeoverPhase.PhantomOn).ToList();
        AddAll(stage);
        foreach (
            var place in stage
                .Where(entry => entry.Move.Phase == ChangeoverPhase.Stage && entry.Move.IsReadBack)
                .Select(entry => entry.Move)
                .GroupBy(move => move.Place)
                .OrderBy(group => groupsOf.OrderOf(group.Key))
        )
        {
            Add(ReadBack(place), null);
        }

        AddAll(during.Where(entry => entry.Move.Phase is ChangeoverPhase.Patch or ChangeoverPhase.Labels));
        var opened = muted.Where(at => last.Carried.ContainsKey(at)).ToList();
        var groups = groupsOf.Of(opened);
        foreach (var group in groups.Where(group => group.Key.Class != SoundClass.Channels))
        {
            Add(Verify(group), null);
        }

        var clocks = during.Where(entry => entry.Move.Phase == ChangeoverPhase.Clock).ToList();
        AddAll(clocks);
        if (clocks.Count > 0)
        {
            Add(
                new PlannedMove
                {
                    Phase = ChangeoverPhase.Clock,
                    Text = "See that every device shows it is locked, at the right sample rate.",
                    Seconds = pace.SecondsToListen,
                },
                null
            );
        }

        foreach (var group in groups)
        {
            Add(Open(group), null);
        }

        states[^1] = last.Show;
        var tasks = StepFolder.Fold(steps, place => DeviceOf(place)?.Profile.Kind, pace.SecondsToLoad);
        return new ChangeoverPlan
        {
            Steps = steps.Select(entry => entry.Step).ToValueList(),
            Tasks = tasks,
            Cards = Cards(tasks),
            States = states.ToValueList(),
            RollbackAfter = during.Count == 0 ? steps.Count : rollback,
            Remarks = remarks,
        };
    }

    private void AddAll(IEnumerable<(PlannedMove Move, RigState State)> moves)
    {
        (PlannedMove Move, RigState State)? waiting = null;
        foreach (var (move, state) in moves)
        {
            if (waiting is { } first && PatchMoves.TryJoin(first.Move, move, out var joined))
            {
                waiting = (joined, state);
                continue;
            }

            Add(waiting);
            waiting = (move, state);
        }

        Add(waiting);
    }

    private void Add((PlannedMove Move, RigState State)? entry)
    {
        if (entry is { } some)
        {
            Add(some.Move, some.State.Show);
        }
    }

    private void Add(PlannedMove move, Show? state)
    {
        var step = new ChangeoverStep
        {
            Number = steps.Count + 1,
            Phase = move.Phase,
            Timing = move.Phase switch
            {
                ChangeoverPhase.Prepare => ChangeoverTiming.Ahead,
                <= ChangeoverPhase.Stage => ChangeoverTiming.ClearStage,
                ChangeoverPhase.Open => ChangeoverTiming.LineCheck,
                _ => ChangeoverTiming.BeforeLineCheck,
            },
            Place = move.Place,
            Text = move.Text,
            Details = move.Details,
            Points = move.Points,
            Hazards = move.Hazards,
            Seconds = move.Seconds,
        };
        steps.Add(
            (
                step,
                move.IsLoad ? FoldKind.Load
                : move.IsPull ? FoldKind.Pull
                : FoldKind.None
            )
        );
        states.Add(state ?? states[^1]);
    }

    /// <summary>
    /// Ends, behind which there is nothing more in one of the states, and channels of consoles: what lies before them in the document is silenced by them. A
    /// point
    /// that neither show knows, as both lack the profile that made it one, cannot be named to anybody.
    /// </summary>
    private bool IsMutable(Point at)
    {
        var side = groupsOf.SideOf(at);
        var index = side.Graph.Find(at);
        return !index.IsNone
            && (
                first.Leaves.Contains(at)
                || last.Leaves.Contains(at)
                || !during.TrueForAll(entry => !entry.State.Leaves.Contains(at))
                || (side.Graph.GroupOf(index).Kind == PortKind.Sink && side.Graph.DeviceOf(index).Profile.Kind == DeviceKind.Console)
            );
    }

    private PlannedMove Mute(IGrouping<(SoundClass Class, Id<Device> Place), Point> group) =>
        Move(
            ChangeoverPhase.Mute,
            group,
            group.Key.Class switch
            {
                SoundClass.Ears => $"Mute the in-ears at {Runs.Text(Runs.Of(group))}.",
                SoundClass.Channels => $"Mute {Runs.Text(Runs.Of(group))}.",
                _ => $"Mute, or turn down what is behind, {Runs.Text(Runs.Of(group))}.",
            },
            pace.SecondsToMute
        ) with
        {
            Hazards = group.Key.Class == SoundClass.Ears ? ["See that the packs are off people's ears first."] : default,
        };

    private PlannedMove ReadBack(IGrouping<Id<Device>?, PlannedMove> place) =>
        new()
        {
            Phase = ChangeoverPhase.ReadBack,
            Place = place.Key,
            Text = "Read back what is plugged here against this card, connector by connector.",
            Points = place.SelectMany(move => move.Points).Distinct().ToValueList(),
            Seconds = pace.SecondsToLoad * place.Count(),
        };

    private PlannedMove Verify(IGrouping<(SoundClass Class, Id<Device> Place), Point> group) =>
        Move(ChangeoverPhase.Verify, group, $"Still muted, check for {Sources(group)}.", pace.SecondsToLoad);

    private PlannedMove Open(IGrouping<(SoundClass Class, Id<Device> Place), Point> group) =>
        Move(
            ChangeoverPhase.Open,
            group,
            group.Key.Class switch
            {
                SoundClass.Ears => $"Open the in-ears at {Runs.Text(Runs.Of(group))} one by one: a technician hears each on a pack, low, before a performer "
                    + "wears it.",
                SoundClass.Channels => $"Line-check {Runs.Text(Runs.Of(group))}, and open each when its line is the right one.",
                _ => $"Bring up {Runs.Text(Runs.Of(group))} one at a time, from low level.",
            },
            pace.SecondsToListen
        ) with
        {
            Hazards = [.. group.Key.Class == SoundClass.Ears ? ["Limiters in the path."] : Array.Empty<string>(), .. OnOpening(group)],
        };

    private static PlannedMove Move(ChangeoverPhase phase, IGrouping<(SoundClass Class, Id<Device> Place), Point> group, string text, int secondsEach) =>
        new()
        {
            Phase = phase,
            Place = group.Key.Place,
            Text = text,
            Points = Runs.Of(group),
            Seconds = secondsEach * group.Count(),
        };

    private IEnumerable<string> OnOpening(IEnumerable<Point> group) =>
        during.Where(entry => entry.Move.OnOpening is not null && entry.Move.Plugs.Intersect(group).Any()).Select(entry => entry.Move.OnOpening!);

    private string Sources(IEnumerable<Point> points)
    {
        var chains = Runs.Chains(
            points.Select(at => (At: at, Source: last.Carried[at], Name: NameOf(at))),
            (x, y) => Runs.Follow(x.At, y.At) && Runs.Follow(x.Source, y.Source) && x.Name == y.Name
        );
        return string.Join(
            "; ",
            chains.Select(chain =>
                $"{Runs.Of(chain.Select(entry => entry.Source))[0]}{(chain[0].Name is { } name ? $" ('{name}')" : "")} "
                + $"at {Runs.Of(chain.Select(entry => entry.At))[0]}"
            )
        );
    }

    /// <summary>The feed that is served at an output, on the way to it, or behind it.</summary>
    private string? NameOf(Point output)
    {
        var side = shows.After;
        var index = side.Graph.Find(output);
        for (var at = index; !at.IsNone && !side.Graph.IsLooping(at); at = side.Graph.Upstream(at))
        {
            if (side.Served(at) is { } served)
            {
                return served.DisplayName;
            }
        }

        return null;
    }

    private DeviceNode? DeviceOf(Id<Device> id) => shows.After.Graph.Device(id) ?? shows.Before.Graph.Device(id);

    private ValueList<ChangeoverCard> Cards(ValueList<ChangeoverTask> tasks) =>
        tasks
            .GroupBy(task => task.Place)
            .OrderBy(group => groupsOf.OrderOf(group.Key))
            .Select(group =>
            {
                var device = group.Key is { } id ? DeviceOf(id) : null;
                return new ChangeoverCard
                {
                    Place = group.Key,
                    Title = device?.DisplayName ?? group.Key?.Value ?? "Clock and network",
                    Zone = device?.Zone is { } zone ? zone.Name ?? zone.Id.Value : null,
                    Tasks = group.ToValueList(),
                    Steps = group.SelectMany(task => task.Steps).OrderBy(step => step.Number).ToValueList(),
                };
            })
            .ToValueList();
}
