using RoutingRules.Checking;
using RoutingRules.Model;
using RoutingRules.Planning.Comparing;
using RoutingRules.Planning.Losses;
using RoutingRules.Profiles;
using RoutingRules.Resolving;

namespace RoutingRules.Planning.Changeovers;

/// <summary>Plans the way from one show to the next.</summary>
/// <remarks>
/// The moves come from what differs; each is then tried on the rig as it stands. What changes no sound is done ahead; everything else waits until all
/// that it, or any other move, touches is muted.
/// </remarks>
internal sealed class ChangeoverPlanner
{
    /// <summary>How many times the order of loads may be tried on the rig; after that they come in their usual order, muted as ever.</summary>
    private const int MaxTrials = 600;

    private readonly Checker checker;
    private readonly Pace pace;
    private readonly ShowComparer shows;
    private readonly RigState first;
    private readonly RigState last;
    private readonly List<(PlannedMove Move, RigState State)> ahead = [];
    private readonly List<(PlannedMove Move, RigState State)> during = [];
    private readonly HashSet<Point> touched = [];
    private readonly List<string> remarks = [];
    private readonly CancellationToken cancellation;
    private readonly IReadOnlyDictionary<string, string> wearers;
    private RigState state;
    private int trials;

    private ChangeoverPlanner(Checker checker, ShowComparer shows, Pace pace, IReadOnlyDictionary<string, string> wearers, CancellationToken cancellation)
    {
        this.checker = checker;
        this.pace = pace;
        this.cancellation = cancellation;
        this.shows = shows;
        this.wearers = wearers;
        var after = shows.After.Show.Document;
        var start = OldTypes.Apart(shows.Before.Show.Document, after.Rig);
        first = RigState.Of(
            checker,
            RouteMap.Spread(
                start with
                {
                    Feeds = after.Feeds,
                    Lines = after.Lines,
                    Rig = start.Rig with
                    {
                        Profiles = start.Rig.Profiles.Concat(after.Rig.Profiles.Where(profile => IsNews(start.Rig, profile))).ToValueList(),
                    },
                }
            )
        );
        last = RigState.Of(checker, after);
        state = first;
    }

    /// <summary>True for a profile of the second show alone; one that a device of the first show names without having it stays unknown there.</summary>
    private static bool IsNews(Rig rig, DeviceProfile profile) =>
        !rig.Profiles.Any(other => other.Id == profile.Id) && !rig.Devices.Any(device => device.Profile == profile.Id);

    /// <summary>Plans.</summary>
    /// <param name="checker">Resolves shows and runs the rules.</param>
    /// <param name="shows">The two shows.</param>
    /// <param name="pace">How long things take.</param>
    /// <param name="wearers">Who wore each radio pack last, before the first show.</param>
    /// <param name="cancellation">Stops the work.</param>
    public static ChangeoverPlan Plan(
        Checker checker,
        ShowComparer shows,
        Pace pace,
        IReadOnlyDictionary<string, string> wearers,
        CancellationToken cancellation
    ) => new ChangeoverPlanner(checker, shows, pace, wearers, cancellation).Plan();

    private ChangeoverPlan Plan()
    {
        var rig = new RigMoves(shows.Before, shows.After, pace);
        var patch = new PatchMoves(shows.Before, shows.After, pace);
        var (takedown, buildUp, cables, plugs) = (rig.Takedown(), rig.BuildUp(), rig.CablesIn().ToList(), PlugMoves.Of(shows, pace));
        var phantom = new PhantomMoves(shows, takedown.Concat(cables).Concat(plugs), pace);
        remarks.AddRange(phantom.Remarks());
        var loads = patch.Loads();
        var early = TakeAhead([.. plugs.Where(move => move.IsNewPlug && !phantom.IsOn(move) && !move.Plugs.Any(phantom.IsNew))]);
        plugs.RemoveAll(early.Contains);
        CheckAhead([.. phantom.ChecksFor(early)]);
        loads.RemoveAll(TakeAhead(loads.FindAll(move => !phantom.IsNew(move.Place))).Contains);
        TakeAll(phantom.Off());
        TakeAll(PackMoves.Of(shows, wearers, pace));
        TakeAll(plugs.Where(move => move.IsPull));
        TakeAll(takedown.Concat(buildUp));
        TakeAll(phantom.ChecksOfNewDevices());
        TakeAll(cables.Concat(plugs.Where(move => !move.IsPull)));
        TakeAll(phantom.On());
        TakeInBestOrder(loads);
        var clocks = rig.Clocks().ToList();
        if (!TakeRest(clocks))
        {
            TakeAll(patch.Labels());
        }

        TakeAll(clocks);
        Settle();
        return new StepWriter(shows, first, last, ahead, during, touched, pace).Write(remarks.ToValueList());
    }

    /// <summary>Takes what changes nothing that can be heard, as long as anything is found, and stays at a place as long as there is something to do.</summary>
    private HashSet<PlannedMove> TakeAhead(List<PlannedMove> moves)
    {
        var taken = new HashSet<PlannedMove>(ReferenceEqualityComparer.Instance);
        var places = moves.GroupBy(move => move.Place).ToList();
        for (var isFound = true; isFound; )
        {
            isFound = false;
            foreach (var place in places)
            {
                while (TakeAhead(place, taken))
                {
                    isFound = true;
                }
            }
        }

        return taken;
    }

    private bool TakeAhead(IEnumerable<PlannedMove> moves, HashSet<PlannedMove> taken)
    {
        var isFound = false;
        foreach (var move in moves.Where(move => !taken.Contains(move)))
        {
            var next = Try(move);
            if (state.Differences(next).Any() || Behind(move).Any() || move.Plugs.Any(IsLive) || (move.IsLoad && next.Show == state.Show))
            {
                continue;
            }

            state = next;
            ahead.Add((move with { Phase = ChangeoverPhase.Prepare }, next));
            isFound = taken.Add(move);
        }

        return isFound;
    }

    /// <summary>Looks at phantom power before anything is plugged ahead; plugs change nothing in the document, so all go on from there.</summary>
    private void CheckAhead(List<PlannedMove> checks)
    {
        var plugs = ahead.ToList();
        ahead.Clear();
        foreach (var check in checks)
        {
            state = Try(check);
            ahead.Add((check, state));
        }

        ahead.AddRange(plugs.Select(plug => (plug.Move, state)));
    }

    /// <summary>True where something else is plugged in, a cable of the rig for one.</summary>
    private bool IsLive(Point at)
    {
        var (side, index) = (shows.Before, shows.Before.Graph.Find(at));
        return side.Served(index) is not null
            || side.LineAt(index) is not null
            || (!index.IsNone && (side.Graph.Via(index) == HopKind.Cable || FallbackWriter.IsCabled(side.Graph, index)));
    }

    private void TakeAll(IEnumerable<PlannedMove> moves)
    {
        foreach (var move in moves)
        {
            Take(move, Try(move));
        }
    }

    /// <summary>
    /// Takes loads so that no output carries on the way what neither show has there, as far as an order can do that, and nothing is muted only because of
    /// the order; then so that what is loaded at one place comes together. Muting does the rest.
    /// </summary>
    private void TakeInBestOrder(List<PlannedMove> loads)
    {
        Id<Device>? here = null;
        while (loads.Count > 0)
        {
            var inOrder = trials < MaxTrials ? loads.OrderBy(move => move.Place != here).ToList() : loads;
            var best = inOrder[0];
            var next = Try(best);
            var worst = Detours(next);
            for (var i = 1; i < inOrder.Count && worst.CompareTo(default) > 0 && trials < MaxTrials; i++)
            {
                var other = Try(inOrder[i]);
                if (Detours(other) is var detours && detours.CompareTo(worst) < 0)
                {
                    (best, next, worst) = (inOrder[i], other, detours);
                }
            }

            here = best.Place;
            Take(best, next);
            loads.Remove(best);
        }
    }

    /// <summary>What the steps left different is loaded as a whole.</summary>
    private bool TakeRest(List<PlannedMove> clocks)
    {
        var timed = RigState.Of(checker, clocks.Aggregate(state.Show, static (show, clock) => clock.Apply(show)));
        if (!timed.Differences(last).Any())
        {
            return false;
        }

        var after = last.Show;
        remarks.Add("Some of the difference could not be taken apart into steps; the whole patch of the next act is loaded at the end.");
        TakeAll([
            new PlannedMove
            {
                Phase = ChangeoverPhase.Patch,
                Text = "Load the whole patch of the next act on every device.",
                Seconds = pace.SecondsToLoad,
                Apply = show => after with { Rig = after.Rig with { Clocks = show.Rig.Clocks, Networks = show.Rig.Networks } },
            },
        ]);
        return true;
    }

    /// <summary>What clocks and networks that are gone leave different comes with the last move, while everything is muted.</summary>
    private void Settle()
    {
        var left = state.Differences(last).ToList();
        touched.UnionWith(left);
        if (left.Count > 0)
        {
            during[^1] = (during[^1].Move, last);
        }
    }

    private RigState Try(PlannedMove move)
    {
        cancellation.ThrowIfCancellationRequested();
        trials++;
        var show = move.Apply(state.Show);
        return ReferenceEquals(show, state.Show) ? state : RigState.Of(checker, show);
    }

    private void Take(PlannedMove move, RigState next)
    {
        touched.UnionWith(state.Differences(next));
        touched.UnionWith(Behind(move));
        if (move.Phase == ChangeoverPhase.Clock)
        {
            touched.UnionWith(state.Carried.Keys.Concat(next.Carried.Keys));
        }

        state = next;
        touched.UnionWith(Behind(move));
        during.Add((move, next));
    }

    /// <summary>
    /// The outputs and sinks that carry what comes in where a plug is pulled or put, or where phantom power is switched, and outputs so plugged.
    /// </summary>
    private IEnumerable<Point> Behind(PlannedMove move)
    {
        var plugs = move.Plugs.ToHashSet();
        return plugs.Count == 0 ? [] : state.Carried.Where(pair => plugs.Contains(pair.Value) || plugs.Contains(pair.Key)).Select(pair => pair.Key);
    }

    /// <summary>How many outputs carry what neither show has there, and how many points carry something else although both shows have the same there.</summary>
    private (int Strangers, int Passing) Detours(RigState next) =>
        next.Show == state.Show
            ? (int.MaxValue, 0)
            : (
                next.Leaves.Count(at => next.Carried.TryGetValue(at, out var source) && !Has(first, at, source) && !Has(last, at, source)),
                state.Differences(next).Count(at => first.Carried.TryGetValue(at, out var source) && Has(last, at, source))
            );

    private static bool Has(RigState rig, Point at, Point source) => rig.Carried.TryGetValue(at, out var own) && own == source;
}
