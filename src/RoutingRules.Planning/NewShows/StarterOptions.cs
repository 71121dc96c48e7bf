using RoutingRules.Model;
using RoutingRules.Profiles;

namespace RoutingRules.Planning.NewShows;

/// <summary>What a starting show shall hold.</summary>
public sealed record StarterOptions
{
    /// <summary>The most of anything that can be asked for but mains and boxes.</summary>
    public const int Most = 99;

    /// <summary>The most main mixes.</summary>
    public const int MostMains = 3;

    /// <summary>The most stage boxes.</summary>
    public const int MostBoxes = 8;

    /// <summary>The longest title, in UTF-16 units.</summary>
    public const int LongestTitle = 200;

    /// <summary>What the show is called, 1 to <see cref="LongestTitle"/> long.</summary>
    public string Title { get; init; } = "New show";

    /// <summary>
    /// The profile of the console. It has source groups <c>main</c>, <c>aux</c> and <c>matrix</c> as far as such mixes are wanted, and sinks <c>channel</c>.
    /// </summary>
    public required Id<DeviceProfile> Console { get; init; }

    /// <summary>The profile of a second console for monitor and in-ear mixes, which every line reaches as well; null for none.</summary>
    public Id<DeviceProfile>? MonitorConsole { get; init; }

    /// <summary>The stage boxes, 1 to <see cref="MostBoxes"/>.</summary>
    public ValueList<StarterBox> Boxes { get; init; }

    /// <summary>The profile of amplifiers that mains and subwoofers end at: line inputs in a group <c>in</c>.</summary>
    public required Id<DeviceProfile> Amplifier { get; init; }

    /// <summary>The profile of racks that in-ear mixes end at: line inputs in a group <c>in</c>, two for each pack.</summary>
    public required Id<DeviceProfile> EarRack { get; init; }

    /// <summary>The profile of the switch that joins the devices where the console's jacks are too few.</summary>
    public required Id<DeviceProfile> Switch { get; init; }

    /// <summary>Main mixes: 1 for mono, 2 for left and right, 3 with a centre; 0 to <see cref="MostMains"/>.</summary>
    public int Mains { get; init; } = 2;

    /// <summary>Mixes of subwoofers, 0 to <see cref="Most"/>.</summary>
    public int Subs { get; init; }

    /// <summary>Monitor mixes, 0 to <see cref="Most"/>.</summary>
    public int Monitors { get; init; } = 2;

    /// <summary>Stereo in-ear mixes, 0 to <see cref="Most"/>.</summary>
    public int InEars { get; init; }

    /// <summary>Voices, 0 to <see cref="Most"/>.</summary>
    public int Vocals { get; init; } = 1;

    /// <summary>Microphones for instruments, without phantom power, 0 to <see cref="Most"/>.</summary>
    public int Microphones { get; init; }

    /// <summary>Direct boxes and microphones that want phantom power, 0 to <see cref="Most"/>.</summary>
    public int PhantomLines { get; init; } = 1;

    /// <summary>Stereo lines, which must not get phantom power, 0 to <see cref="Most"/>.</summary>
    public int StereoLines { get; init; } = 1;

    /// <summary>Whether the network is a ring, so that every link may fail; each device then needs two jacks.</summary>
    public bool IsRedundant { get; init; }

    /// <summary>Whether the show comes with its patch; without it, assigning the show makes one.</summary>
    public bool IsPatched { get; init; } = true;

    /// <summary>Profiles of consoles to try where something does not fit, the smallest first.</summary>
    public ValueList<Id<DeviceProfile>> OtherConsoles { get; init; }

    /// <summary>Profiles of stage boxes to try where something does not fit, the smallest first.</summary>
    public ValueList<Id<DeviceProfile>> OtherBoxes { get; init; }
}
