using RoutingRules.Checking.Facts.Lines;
using RoutingRules.Model;
using RoutingRules.Planning.Comparing;
using RoutingRules.Signal;

namespace RoutingRules.Planning.Changeovers;

/// <summary>Decides about phantom power before any plug moves: off, or seen to be off, wherever one does; on only after all are in.</summary>
/// <remarks>
/// Where the first show says nothing, its lines tell: what needs phantom power has it, what must not get it does not. Everywhere else it may be on. Whoever
/// owns
/// the gain of an input before the change switches its phantom power, as gain owners change only after it.
/// </remarks>
internal sealed class PhantomMoves
{
    private readonly ShowSide before;
    private readonly ShowSide after;
    private readonly Pace pace;
    private readonly PhantomNeeds old;
    private readonly PhantomNeeds now;
    private readonly Dictionary<Point, Id<Device>> oldOwners;
    private readonly Dictionary<Point, Id<Device>> newOwners;
    private readonly List<Point> all;
    private readonly HashSet<Point> moving = [];
    private readonly HashSet<Point> careful = [];
    private readonly HashSet<Point> chosen = [];
    private readonly HashSet<Point> done = [];

    /// <param name="shows">The two shows.</param>
    /// <param name="stage">All plugs and cables that move.</param>
    /// <param name="pace">How long things take.</param>
    public PhantomMoves(ShowComparer shows, IEnumerable<PlannedMove> stage, Pace pace)
    {
        (before, after, this.pace) = (shows.Before, shows.After, pace);
        (old, now) = (new PhantomNeeds(before), new PhantomNeeds(after));
        (oldOwners, newOwners) = (InputMap.Owners(before.Show.Document.Patch.Inputs), InputMap.Owners(after.Show.Document.Patch.Inputs));
        foreach (var move in stage)
        {
            moving.UnionWith(Supplies(move));
            if (move.NeedsPhantomOff)
            {
                careful.UnionWith(Supplies(move));
            }
        }

        foreach (var supplies in now.Required.Where(supplies => !supplies.Exists(at => now.Said.GetValueOrDefault(at))))
        {
            // One supply only; the one that has it already, if any.
            var able = supplies.FindAll(at => !now.Said.ContainsKey(at) && now.Forbidding(at).Count == 0);
            chosen.UnionWith(able.Where(at => !IsNew(at) && IsOn(at) == true).Concat(able).Take(1));
        }

        all =
        [
            .. old
                .Known.Concat(now.Known)
                .Concat(moving)
                .Distinct()
                .Where(at => !before.Graph.Find(at).IsNone || !after.Graph.Find(at).IsNone)
                .OrderBy(at => after.Graph.Find(at) is { IsNone: false } index ? index.Value : after.Graph.PointCount + before.Graph.Find(at).Value),
        ];
    }

    /// <summary>True when a plug goes in where phantom power is on.</summary>
    public bool IsOn(PlannedMove move) => Supplies(move).Any(at => IsOn(at) == true);

    /// <summary>True for a point of a device that comes, or comes in the place of one of another type: what it was left at is not known.</summary>
    public bool IsNew(Point at) => IsNew(at.Device);

    /// <summary>True for a device that comes, or comes in the place of one of another type.</summary>
    public bool IsNew(Id<Device>? place) =>
        place is { } id && (before.Graph.Device(id) is not { } was || after.Graph.Device(id) is not { } device || was.Model.Profile != device.Model.Profile);

    /// <summary>What has to be looked at before some plugs go in ahead of the change.</summary>
    public IEnumerable<PlannedMove> ChecksFor(IEnumerable<PlannedMove> plugs)
    {
        var points = plugs.SelectMany(Supplies).ToHashSet();
        return Check(all.Where(at => points.Contains(at) && NeedsCheck(at)), ChangeoverPhase.Prepare);
    }

    /// <summary>Phantom power that goes off, or is seen to be off, before a plug is pulled.</summary>
    public IEnumerable<PlannedMove> Off()
    {
        var on = all.FindAll(at => IsOn(at) == true && !before.Graph.Find(at).IsNone && (moving.Contains(at) || Goal(at) == false));
        done.UnionWith(on);
        var switched = Of(
            on,
            ChangeoverPhase.PhantomOff,
            "Switch phantom power off at",
            "Wait some seconds before the plug is pulled: the voltage takes a moment to go.",
            false
        );
        return switched.Concat(Check(all.Where(NeedsCheck), ChangeoverPhase.PhantomOff));
    }

    /// <summary>What has to be looked at on devices that come, before anything is plugged into them.</summary>
    public IEnumerable<PlannedMove> ChecksOfNewDevices() =>
        Check(all.Where(at => IsNew(at) && !after.Graph.Find(at).IsNone && (moving.Contains(at) || Goal(at) is not null)), ChangeoverPhase.Stage);

    /// <summary>Phantom power that comes on, when all plugs are in.</summary>
    public IEnumerable<PlannedMove> On() =>
        Of(
            all.FindAll(at => Goal(at) == true && (IsNew(at) || IsOn(at) != true || done.Contains(at))),
            ChangeoverPhase.PhantomOn,
            "Switch phantom power on at",
            "Only after the plug is in, with every channel of it muted.",
            true
        );

    /// <summary>Where the second show has phantom power on against what its own line must get.</summary>
    public IEnumerable<string> Remarks() =>
        from at in all
        where now.Said.GetValueOrDefault(at) && Goal(at) == false
        select $"{LineInputs.Names(now.Forbidding(at))} must not get phantom power, and the second show has it on at {at}: this plan leaves it off there.";

    private bool NeedsCheck(Point at) => IsOn(at) is null && !IsNew(at) && !done.Contains(at) && (careful.Contains(at) || Goal(at) == false);

    /// <summary>Whether phantom power is on before the change; null where it may be.</summary>
    private bool? IsOn(Point at) =>
        old.Said.TryGetValue(at, out var said) ? said
        : old.IsPowered(at) ? true
        : old.Forbidding(at).Count > 0 ? false
        : null;

    /// <summary>Whether it shall be on after the change; null where nobody minds.</summary>
    private bool? Goal(Point at) =>
        after.Graph.Find(at).IsNone ? null
        : now.Forbidding(at).Count > 0 && !IsWrongInBoth(at) ? false
        : now.Said.TryGetValue(at, out var said) ? said
        : chosen.Contains(at) ? true
        : null;

    /// <summary>
    /// True where both shows have it on against their own line, by what they say or by what another line there needs, and nothing moves: that is a finding
    /// about the shows, and no step between them.
    /// </summary>
    private bool IsWrongInBoth(Point at) =>
        old.Forbidding(at).Count > 0
        && !moving.Contains(at)
        && !IsNew(at)
        && ((now.Said.GetValueOrDefault(at) && old.Said.GetValueOrDefault(at)) || (now.IsPowered(at) && old.IsPowered(at)));

    private IEnumerable<Point> Supplies(PlannedMove move) => move.Plugs.SelectMany(at => old.SuppliesAt(at).Concat(now.SuppliesAt(at))).Distinct();

    private List<PlannedMove> Check(IEnumerable<Point> points, ChangeoverPhase phase)
    {
        var checkedNow = points.ToList();
        done.UnionWith(checkedNow);
        return Of(
            checkedNow,
            phase,
            "Check that phantom power (48 V) is off at",
            "Where it is on, switch it off and wait some seconds before anything is plugged.",
            false
        );
    }

    private List<PlannedMove> Of(List<Point> points, ChangeoverPhase phase, string what, string hazard, bool isOn) =>
        [
            .. points
                .GroupBy(at => Owner(at, isOn))
                .Select(group => new PlannedMove
                {
                    Phase = phase,
                    Place = group.Key,
                    Text = $"{what} {Runs.Text(Runs.Of(group))}.",
                    Points = Runs.Of(group),
                    Hazards = [hazard],
                    Seconds = pace.SecondsToLoad * Runs.Of(group).Count,
                    IsReadBack = false,
                    Apply = show => group.Aggregate(show, (state, at) => InputMap.With(state, at, input => input with { Phantom = isOn })),
                    Plugs = group.SelectMany(Behind).Distinct().ToValueList(),
                }),
        ];

    /// <summary>Who switches it: the owner of the gain before the change, unless that one goes; else the one after it; else it is done at the device.</summary>
    private Id<Device> Owner(Point at, bool isAfterwards) =>
        oldOwners.TryGetValue(at, out var was) && !(isAfterwards && after.Graph.Device(was) is null) ? was : newOwners.GetValueOrDefault(at, at.Device);

    /// <summary>
    /// The points whose signal thumps when the phantom power of an input changes: the input, where its signal begins, and all legs of a line it supplies.
    /// </summary>
    private IEnumerable<Point> Behind(Point at) =>
        new[] { before, after }
            .Where(side => !side.Graph.Find(at).IsNone)
            .Select(side => side.Source(side.Graph.Find(at)))
            .OfType<Point>()
            .Concat(old.Entries(at))
            .Concat(now.Entries(at))
            .Append(at);
}
