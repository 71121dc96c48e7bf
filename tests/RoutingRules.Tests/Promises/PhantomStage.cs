using FsCheck;
using FsCheck.Fluent;
using RoutingRules.Model;
using RoutingRules.Testing;
using RoutingRules.Tests.Checking.Rules.Lines;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Promises;

/// <summary>Two consoles, two boxes and a passive split, with six lines that want phantom power, must not get it or do not mind.</summary>
internal static class PhantomStage
{
    private static readonly string[][] Places =
    [
        ["box/in/1"],
        ["box/in/2"],
        ["box/in/3"],
        ["box/in/4"],
        ["split/in/1"],
        ["split/in/2"],
        ["desk/in/1"],
        ["mon/in/1"],
        ["box/in/7", "mon/in/2"],
        ["box/in/8", "desk/in/2"],
        ["box/in/7"],
        ["new/in/1"],
    ];

    /// <summary>Two shows on it, with much in common and little said.</summary>
    public static Arbitrary<ShowPair> Pairs() =>
        Arb.From(
            from first in Seeds()
            from next in Seeds()
            from kept in Gen.Choose(0, 3)
            select new ShowPair(Make(first), Make(first.Zip(next, (old, now) => now % 4 < kept ? old : now).ToArray()))
        );

    /// <summary>A running order of three acts on it.</summary>
    public static Arbitrary<RunningOrder> Runs() =>
        Arb.From(
            Seeds()
                .ListOf(3)
                .Select(acts => new RunningOrder
                {
                    Title = "Day",
                    Date = new DateOnly(2027, 6, 12),
                    Rig = Make(new int[20]).Rig,
                    Acts = acts.Select((seeds, i) => new Act { Id = new($"act-{i + 1}"), Lines = Lines(seeds, isFree: true) }).ToValueList(),
                })
        );

    private static Gen<int[]> Seeds() => Gen.Choose(0, 1 << 16).ArrayOf(20);

    private static Show Make(int[] seeds)
    {
        var cables = new List<Cable>();
        if (seeds[12] % 3 > 0)
        {
            cables.Add(Cable("split/one/1-2", "box/in/5-6"));
        }

        if (seeds[13] % 3 > 0)
        {
            cables.Add(Cable("split/two/1", "mon/in/1"));
        }

        if (seeds[14] % 5 == 0)
        {
            cables.Add(Cable("split/isolated/2", "desk/in/1"));
        }

        (string, RoutingRules.Profiles.DeviceProfile)[] devices =
        [
            ("desk", SmallProfiles.Console),
            ("mon", SmallProfiles.Console),
            ("box", SmallProfiles.Box),
            ("split", LineRig.Split),
        ];
        var show = Of(seeds[15] % 4 == 0 ? [.. devices, ("new", SmallProfiles.FreeBox)] : devices)
            .With(
                Stream("s", "box/transmit/1-4", "desk/receive/1-4", "mon/receive/1-4"),
                Stream("t", "box/transmit/5-8", "desk/receive/5-8", "mon/receive/5-8")
            )
            .Cables([.. cables]) with
        {
            Lines = Lines(seeds, isFree: false),
        };
        return show with
        {
            Patch = show.Patch with
            {
                Inputs = Settings(seeds).ToValueList(),
                Routes = [Route("desk/in/1", "desk/channel/7"), Route("mon/in/1-2", "mon/channel/7-8")],
            },
        };
    }

    private static ValueList<Line> Lines(int[] seeds, bool isFree)
    {
        var lines = new List<Line>();
        var taken = new HashSet<string>();
        for (var i = 0; i < 6; i++)
        {
            // Nothing else is plugged in where something is.
            var places = Places[isFree ? i + 2 : seeds[i] / 32 % Places.Length];
            var isOpen = isFree && i < 4;
            if (seeds[i] % 5 > 0 && (isOpen || !places.Any(taken.Contains)))
            {
                taken.UnionWith(isOpen ? [] : places);
                lines.Add(
                    new Line
                    {
                        Id = new($"line-{i + 1}"),
                        Kind = LineKind.Microphone,
                        Phantom = (PhantomNeed)(seeds[i] / 8 % 3),
                        From = isOpen ? new LineOrigin { Devices = [new("box")] } : new LineOrigin { At = places.Select(At).ToValueList() },
                        To = [At($"desk/channel/{i + 1}")],
                    }
                );
            }
        }

        return lines.ToValueList();
    }

    private static IEnumerable<InputSettings> Settings(int[] seeds)
    {
        string[] inputs = ["box/in/1", "box/in/2", "box/in/3-4", "box/in/5-6", "box/in/7", "box/in/8", "desk/in/1-2", "mon/in/1-2"];
        for (var i = 0; i < inputs.Length; i++)
        {
            var dice = seeds[i % 6 + 6] / (i + 3);
            if (dice % 3 == 0)
            {
                yield return new InputSettings
                {
                    At = At(inputs[i]),
                    Phantom = dice % 2 == 0,
                    GainOwner = dice % 5 == 0 ? null : new(dice % 5 == 1 ? "mon" : "desk"),
                };
            }
        }
    }
}
