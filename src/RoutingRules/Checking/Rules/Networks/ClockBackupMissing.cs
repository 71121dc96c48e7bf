using RoutingRules.Model;
using RoutingRules.Networks;
using RoutingRules.Profiles;
using RoutingRules.Resolving;
using RoutingRules.Rules;
using RoutingRules.Signal.Graph;

namespace RoutingRules.Checking.Rules.Networks;

/// <summary>Reports clocks that nobody takes over.</summary>
/// <remarks>
/// One finding for each clock of a network that carries streams; the entity is the clock. It is a warning where another device could lead: one that sends or
/// receives slots and is no amplifier, is joined to the leader and runs at the clock's rate; else a note.
/// </remarks>
public sealed class ClockBackupMissing : Rule<ResolvedShow>
{
    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR5009",
            Name = "clock-backup-missing",
            Title = "Clock without a backup",
            Family = RuleFamily.Network,
            Severity = Severity.Warning,
            Severities = [Severity.Warning, Severity.Note],
            Checks = "The clock of every network that carries streams has a backup: another device than the leader, joined to it.",
            Why = "When the leader loses power the devices agree on a new one by themselves, with a gap of seconds, and perhaps on the wrong one.",
            Remedy = "Name a second device as backup: one that stays on all day and has its own supply.",
            Source = "IEEE 802.1AS, clause 10.3 (from memory); common practice, no source, for a backup that is declared",
            Fixability = Fixability.Unsafe,
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, ResolvedShow subject)
    {
        if (context.Rig.Clocks.IsEmpty || context.Streams.Count == 0)
        {
            return;
        }

        var map = ClockMap.Of(context);
        for (var index = 0; index < context.Rig.Clocks.Count; index++)
        {
            var clock = context.Rig.Clocks[index];
            if (!map.IsUsed(index) || context.Device(clock.Leader) is not { } leader || (clock.Backup is { } named && context.Device(named) is null))
            {
                continue;
            }

            context.LookedAt();
            var reach = map.Reach(index);
            var backup = clock.Backup is { } id ? context.Device(id) : null;
            var why =
                backup is null ? "has no backup"
                : backup == leader ? "has its own leader as backup"
                : reach.Find(backup.Index) != reach.Find(leader.Index) && !HasBrokenLink(context, map, index)
                    ? $"has {backup.Id} as backup, which is not joined to it"
                : null;
            if (why is null)
            {
                continue;
            }

            var other = Other(context, reach, leader, clock);
            context.ReportAs(
                other is null ? Severity.Note : Severity.Warning,
                $"Clock '{clock.Id}', led by {leader.Id}, {why}"
                    + (other is null ? "; no other device on its networks could take over." : $"; {other.Id}, for one, could take over."),
                $"/rig/clocks/{index}",
                Entity.Of("clock", clock.Id)
            );
        }
    }

    /// <summary>
    /// How well a device suits as a clock: consoles first, then stage boxes, then others; -1 for one that does not, such as an amplifier, which may be
    /// switched off last and on late.
    /// </summary>
    internal static int Suitability(DeviceNode device) =>
        device.Profile.Kind == DeviceKind.Amplifier || !ClockMap.HasSlots(device) ? -1
        : device.Profile.Kind == DeviceKind.Console ? 0
        : device.Profile.Kind == DeviceKind.StageBox ? 1
        : 2;

    /// <summary>The device that suits best of those that could take over, the first by id of equals.</summary>
    private static DeviceNode? Other(RuleContext context, DisjointSets reach, DeviceNode leader, Clock clock)
    {
        DeviceNode? first = null;
        foreach (var device in context.Devices)
        {
            if (
                device != leader
                && reach.Find(device.Index) == reach.Find(leader.Index)
                && Suitability(device) >= 0
                && (device.Profile.SampleRates.IsEmpty || device.Profile.SampleRates.Contains(clock.SampleRate))
                && (first is null || (Suitability(device), device.Id).CompareTo((Suitability(first), first.Id)) < 0)
            )
            {
                first = device;
            }
        }

        return first;
    }

    private static bool HasBrokenLink(RuleContext context, ClockMap map, int clock)
    {
        for (var network = 0; network < context.Rig.Networks.Count; network++)
        {
            if (map.ClockOf(network) == clock && map.HasBrokenLink(network))
            {
                return true;
            }
        }

        return false;
    }
}
