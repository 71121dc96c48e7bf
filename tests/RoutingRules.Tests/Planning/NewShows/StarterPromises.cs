using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using RoutingRules.Documents;
using RoutingRules.Model;
using RoutingRules.Planning.NewShows;
using RoutingRules.Profiles;
using RoutingRules.Profiles.Generic;
using RoutingRules.Rules;

namespace RoutingRules.Tests.Planning.NewShows;

/// <summary>Whatever is asked for within the ranges, there is a clean show that holds it, or an account of what does not fit that can be relied on.</summary>
[Trait("Speed", "slow")]
public sealed class StarterPromises
{
    private const int Cases = 16;
    private const int MostBoxes = 4;

    private static readonly RoutingEngine Engine = RoutingEngine.CreateBuilder().AddProfiles(new GenericProfiles()).Build();

    private static readonly ValueList<Id<DeviceProfile>> Consoles = [new("generic/console-small"), new("generic/console-medium"), new("generic/console-large")];

    private static readonly ValueList<Id<DeviceProfile>> Boxes =
    [
        new("generic/stage-box-small"),
        new("generic/stage-box-medium"),
        new("generic/stage-box-large"),
    ];

    /// <summary>Notes that a full rig earns: no free output is left.</summary>
    private static readonly string[] OfFullRigs = ["RR3012", "RR8003"];

    private static Gen<StarterOptions> Options() =>
        from console in Gen.Elements<Id<DeviceProfile>>([.. Consoles, Consoles[1], Consoles[2]])
        from second in Gen.Frequency(
            (2, Gen.Constant((Id<DeviceProfile>?)null)),
            (1, Gen.Elements<Id<DeviceProfile>>(Consoles).Select(id => (Id<DeviceProfile>?)id))
        )
        from boxes in Gen.Choose(1, MostBoxes).SelectMany(most => Gen.Choose(1, most)).SelectMany(count => Box().ListOf(count))
        from mains in Gen.Choose(0, StarterOptions.MostMains)
        from counts in Count().ListOf(7)
        from redundant in Gen.Elements(false, false, true)
        from patched in Gen.Elements(true, true, false)
        select new StarterOptions
        {
            Title = "Quay \u00d8 \ud83c\udfb8 {0}",
            Console = console,
            MonitorConsole = second,
            Boxes = boxes.ToValueList(),
            Amplifier = new("generic/amplifier-4"),
            EarRack = new("generic/ear-rack-8"),
            Switch = new("generic/network-switch-10"),
            Mains = mains,
            Subs = counts[0],
            Monitors = counts[1],
            InEars = counts[2],
            Vocals = counts[3],
            Microphones = counts[4],
            PhantomLines = counts[5],
            StereoLines = counts[6],
            IsRedundant = redundant,
            IsPatched = patched,
            OtherConsoles = Consoles,
            OtherBoxes = Boxes,
        };

    private static Gen<StarterBox> Box() =>
        from profile in Gen.Elements<Id<DeviceProfile>>([
            .. Boxes,
            new("generic/stage-box-free"),
            new("generic/stage-box-banked"),
            new("generic/stage-box-large-clearable"),
        ])
        from place in Gen.Elements<StagePlace?>(null, null, StagePlace.Stage, StagePlace.StageLeft, StagePlace.StageRight, StagePlace.Riser)
        select new StarterBox { Profile = profile, Place = place };

    private static Gen<int> Count() =>
        Gen.Frequency((6, Gen.Constant(0)), (20, Gen.Choose(1, 3)), (4, Gen.Choose(4, 10)), (1, Gen.Choose(11, StarterOptions.Most)));

    [Property(MaxTest = Cases)]
    public Property A_starting_show_is_clean_and_whole_or_what_does_not_fit_is_told_truly() =>
        Prop.ForAll(
            Options().ToArbitrary(),
            options =>
            {
                var result = ShowStarter.Start(Engine, options);
                if (result.Shortage is { } shortage)
                {
                    CheckShortage(options, shortage);
                    return;
                }

                CheckShow(options, result);
            }
        );

    private static void CheckShow(StarterOptions options, StarterResult result)
    {
        var show = ShowReader.Read(ShowWriter.ToUtf8(result.Show!)).Value!;
        Assert.Equal(result.Show, show);
        Assert.Equal(options.Title, show.Title);
        Assert.Equal(options.Mains, show.Feeds.Count(feed => feed.Role == FeedRole.Main));
        Assert.Equal(options.Subs, show.Feeds.Count(feed => feed.Role == FeedRole.Sub));
        Assert.Equal(options.Monitors, show.Feeds.Count(feed => feed.Role == FeedRole.Monitor));
        Assert.Equal(options.InEars, show.Feeds.Count(feed => feed is { Source.Width: 2, Limiter: true } && feed.Role == FeedRole.InEar));
        Assert.Equal(options.Vocals + options.Microphones, show.Lines.Count(line => line is { Kind: LineKind.Microphone, Phantom: PhantomNeed.Either }));
        Assert.Equal(options.PhantomLines, show.Lines.Count(line => line.Phantom == PhantomNeed.Required));
        Assert.Equal(options.StereoLines, show.Lines.Count(line => line is { Phantom: PhantomNeed.Forbidden, Width: 2 }));
        Assert.Equal(
            options.Boxes.Count,
            show.Rig.Devices.Count(device => Boxes.Contains(device.Profile) || device.Profile.Value.StartsWith("generic/stage-box", StringComparison.Ordinal))
        );

        Assert.DoesNotContain(result.Check!.Findings, finding => !OfFullRigs.Contains(finding.Rule));
        if (options.IsPatched)
        {
            Assert.Equal(result.Check.Findings.Select(finding => finding.Message), Engine.Check(show).Findings.Select(finding => finding.Message));
            return;
        }

        Assert.True(show.Patch.Streams.IsEmpty && show.Patch.Routes.All(route => route.From is null));
        var assigned = Engine.Assign(show);
        Assert.Empty(assigned.Unplaced);
        Assert.DoesNotContain(assigned.Check.Findings, finding => finding.Severity != Severity.Note);
    }

    private static void CheckShortage(StarterOptions options, StarterShortage shortage)
    {
        Assert.NotEmpty(shortage.Reason);
        Assert.All(shortage.Room, room => Assert.NotNull(ShowStarter.Start(Engine, room.Options).Show));
        if (shortage.Fitting is { } fitting)
        {
            Assert.InRange(fitting, 0, shortage.Asked - 1);
            Assert.NotNull(ShowStarter.Start(Engine, ShowStarter.With(options, shortage.Part, fitting)).Show);
        }
    }
}
