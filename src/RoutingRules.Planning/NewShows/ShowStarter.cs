using RoutingRules.Assignment;
using RoutingRules.Documents;
using RoutingRules.Model;
using RoutingRules.Profiles;

namespace RoutingRules.Planning.NewShows;

/// <summary>
/// Makes a show to start from: rig, network, feeds and lines by numbers, placed by assigning, with amplifiers and racks where the mixes arrive.
/// </summary>
/// <remarks>Everything that is asked for has a place in the show, or there is no show. Equal options give equal shows.</remarks>
public static class ShowStarter
{
    /// <summary>Free outputs that are tried for in each group, so that there are spares where there is room for them.</summary>
    private static readonly int[] Spares = [2, 1, 0];

    /// <summary>Enough for a show of this size, and little where something does not fit and several others are tried.</summary>
    private const long Budget = 60_000;

    /// <summary>Makes the show.</summary>
    /// <param name="engine">The engine; knows the profiles, and says what is wrong with the show.</param>
    /// <param name="options">What it shall hold.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="ArgumentNullException"><paramref name="engine"/> or <paramref name="options"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of its range.</exception>
    /// <exception cref="ArgumentException">The title is one that no document can hold, or a profile does not exist or cannot serve; the message says
    /// which.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static StarterResult Start(RoutingEngine engine, StarterOptions options, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(engine);
        ArgumentNullException.ThrowIfNull(options);
        Refuse(options);
        var profiles = new StarterProfiles(engine.Profiles);
        RefuseProfiles(options, profiles);
        var attempt = Try(engine, options, profiles, Spares, cancellation);
        if (attempt.Shortage is { } shortage)
        {
            return new StarterResult { Shortage = Explain(engine, options, profiles, shortage, cancellation) };
        }

        var show = attempt.Show!;
        var check = engine.Check(show, cancellation);
        return new StarterResult
        {
            Show = options.IsPatched ? show : show with { Patch = show.Patch with { Streams = default, Routes = attempt.Cleared } },
            Check = check,
        };
    }

    private readonly record struct Attempt(Show? Show, ValueList<Route> Cleared, (StarterPart Part, string Reason)? Shortage);

    private static Attempt Try(RoutingEngine engine, StarterOptions options, StarterProfiles profiles, ReadOnlySpan<int> spares, CancellationToken cancellation)
    {
        var rig = new StarterRig(options, profiles);
        var intent = new StarterIntent(options, profiles, rig);
        if ((rig.RingFault() is { } fault ? (StarterPart.Redundancy, fault) : intent.Shortage) is { } shortage)
        {
            return new Attempt(null, default, shortage);
        }

        var asked = new Show
        {
            Title = options.Title,
            Rig = rig.Make(),
            Feeds = intent.Feeds,
            Lines = intent.Lines,
        };
        var quick = engine.Assigner.WithoutRules();
        for (var i = 0; ; i++)
        {
            var result = quick.Assign(asked, new AssignmentOptions { Spares = spares[i], Budget = Budget }, cancellation);
            cancellation.ThrowIfCancellationRequested();
            if (result.Unplaced.IsEmpty)
            {
                var ends = new StarterEnds(options, profiles, rig, intent);
                return new Attempt(ends.Finish(result.Show, result.Placements), ends.Cleared, null);
            }

            if (i == spares.Length - 1)
            {
                var unplaced = result.Unplaced[0];
                return new Attempt(null, default, (intent.PartOf(unplaced.Demand), $"'{unplaced.Demand}' finds no place: {unplaced.Reason.TrimEnd('.')}"));
            }
        }
    }

    private static StarterShortage Explain(
        RoutingEngine engine,
        StarterOptions options,
        StarterProfiles profiles,
        (StarterPart Part, string Reason) shortage,
        CancellationToken cancellation
    )
    {
        var asked = CountOf(options, shortage.Part);
        var (low, high) = (-1, asked);
        while (high - low > 1)
        {
            var middle = (low + high) / 2;
            if (Fits(With(options, shortage.Part, middle)))
            {
                low = middle;
            }
            else
            {
                high = middle;
            }
        }

        var room = new List<StarterRoom>();
        foreach (var ladder in (List<StarterRoom>[])[Consoles(options), MonitorConsoles(options), BoxProfiles(options), MoreBoxes(options)])
        {
            AddFirst(ladder);
        }

        if (room.Count == 0)
        {
            AddFirst(Together(options));
        }

        return new StarterShortage
        {
            Part = shortage.Part,
            Asked = asked,
            Fitting = low < 0 ? null : low,
            Reason = shortage.Reason,
            Room = room.ToValueList(),
        };

        bool Fits(StarterOptions tried) => Try(engine, tried, profiles, [0], cancellation).Shortage is null;

        void AddFirst(List<StarterRoom> ladder)
        {
            if (ladder.Find(step => Fits(step.Options)) is { } step)
            {
                room.Add(step);
            }
        }
    }

    private static List<StarterRoom> Consoles(StarterOptions options) =>
        [.. options.OtherConsoles.Where(id => id != options.Console).Select(id => Room(options with { Console = id }, StarterChange.Console))];

    private static List<StarterRoom> MonitorConsoles(StarterOptions options) =>
        options.MonitorConsole is null
            ? []
            :
            [
                .. options
                    .OtherConsoles.Where(id => id != options.MonitorConsole)
                    .Select(id => Room(options with { MonitorConsole = id }, StarterChange.MonitorConsole)),
            ];

    private static List<StarterRoom> BoxProfiles(StarterOptions options) =>
        [.. options.OtherBoxes.Select(id => Room(WithBoxes(options, id), StarterChange.BoxProfile)).Where(room => room.Options != options)];

    private static List<StarterRoom> MoreBoxes(StarterOptions options) =>
        [
            .. Enumerable
                .Range(options.Boxes.Count + 1, StarterOptions.MostBoxes - options.Boxes.Count)
                .Select(count => Room(WithBoxes(options, count), StarterChange.MoreBoxes)),
        ];

    /// <summary>Two and three changes at once.</summary>
    private static List<StarterRoom> Together(StarterOptions options)
    {
        var rooms = new List<StarterRoom>();
        foreach (var desk in options.OtherConsoles)
        {
            var second = options.MonitorConsole is null ? null : (Id<DeviceProfile>?)desk;
            var larger = options with { Console = desk, MonitorConsole = second };
            StarterChange[] desks = second is null ? [StarterChange.Console] : [StarterChange.Console, StarterChange.MonitorConsole];
            rooms.AddRange(options.OtherBoxes.Select(id => Room(WithBoxes(larger, id), [.. desks, StarterChange.BoxProfile])));
            rooms.AddRange(MoreBoxes(larger).Select(step => Room(step.Options, [.. desks, StarterChange.MoreBoxes])));
        }

        foreach (var id in options.OtherBoxes)
        {
            rooms.AddRange(MoreBoxes(WithBoxes(options, id)).Select(step => Room(step.Options, StarterChange.BoxProfile, StarterChange.MoreBoxes)));
        }

        return rooms;
    }

    private static StarterRoom Room(StarterOptions options, params StarterChange[] changes) => new() { Options = options, Changes = changes.ToValueList() };

    private static StarterOptions WithBoxes(StarterOptions options, Id<DeviceProfile> profile) =>
        options with
        {
            Boxes = options.Boxes.Select(box => box with { Profile = profile }).ToValueList(),
        };

    private static StarterOptions WithBoxes(StarterOptions options, int count) =>
        options with
        {
            Boxes = options.Boxes.Concat(Enumerable.Repeat(new StarterBox { Profile = options.Boxes[^1].Profile }, count - options.Boxes.Count)).ToValueList(),
        };

    private static int CountOf(StarterOptions options, StarterPart part) =>
        part switch
        {
            StarterPart.Mains => options.Mains,
            StarterPart.Subs => options.Subs,
            StarterPart.Monitors => options.Monitors,
            StarterPart.InEars => options.InEars,
            StarterPart.Vocals => options.Vocals,
            StarterPart.Microphones => options.Microphones,
            StarterPart.PhantomLines => options.PhantomLines,
            StarterPart.StereoLines => options.StereoLines,
            _ => options.IsRedundant ? 1 : 0,
        };

    /// <summary>The options with another count of one part.</summary>
    internal static StarterOptions With(StarterOptions options, StarterPart part, int count) =>
        part switch
        {
            StarterPart.Mains => options with { Mains = count },
            StarterPart.Subs => options with { Subs = count },
            StarterPart.Monitors => options with { Monitors = count },
            StarterPart.InEars => options with { InEars = count },
            StarterPart.Vocals => options with { Vocals = count },
            StarterPart.Microphones => options with { Microphones = count },
            StarterPart.PhantomLines => options with { PhantomLines = count },
            StarterPart.StereoLines => options with { StereoLines = count },
            _ => options with { IsRedundant = count > 0 },
        };

    private static void Refuse(StarterOptions options)
    {
        foreach (var part in Enum.GetValues<StarterPart>())
        {
            var most = part == StarterPart.Mains ? StarterOptions.MostMains : StarterOptions.Most;
            if (CountOf(options, part) is var count && (count < 0 || count > most))
            {
                throw new ArgumentOutOfRangeException(nameof(options), count, FormattableString.Invariant($"{part} must be 0 to {most}."));
            }
        }

        if (options.Boxes.Count is 0 or > StarterOptions.MostBoxes)
        {
            throw new ArgumentOutOfRangeException(
                nameof(options),
                options.Boxes.Count,
                FormattableString.Invariant($"There must be 1 to {StarterOptions.MostBoxes} boxes.")
            );
        }

        if (options.Title.Length is 0 or > StarterOptions.LongestTitle)
        {
            throw new ArgumentOutOfRangeException(
                nameof(options),
                options.Title.Length,
                FormattableString.Invariant($"A title takes 1 to {StarterOptions.LongestTitle} characters.")
            );
        }

        var read = ShowReader.Read(ShowWriter.Text(new Show { Title = options.Title, Rig = new Rig() }));
        if (!read.IsUsable || read.Value!.Title != options.Title)
        {
            throw new ArgumentException(
                read.IsUsable
                    ? "the title holds half a character, which no document can hold; type it again."
                    : $"the title cannot be used: {read.Findings[0].Message}"
            );
        }
    }

    private static void RefuseProfiles(StarterOptions options, StarterProfiles profiles)
    {
        foreach (var console in options.MonitorConsole is { } second ? (Id<DeviceProfile>[])[options.Console, second] : [options.Console])
        {
            if (profiles.Find(console).Kind != DeviceKind.Console)
            {
                throw new ArgumentException($"'{console}' is no console.");
            }
        }

        foreach (var box in options.Boxes)
        {
            if (profiles.Find(box.Profile).Kind != DeviceKind.StageBox)
            {
                throw new ArgumentException($"'{box.Profile}' is no stage box.");
            }
        }

        foreach (var id in (Id<DeviceProfile>[])[options.Amplifier, options.EarRack, options.Switch])
        {
            _ = profiles.Find(id);
        }
    }
}
