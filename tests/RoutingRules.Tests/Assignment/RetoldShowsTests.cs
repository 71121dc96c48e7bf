using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using RoutingRules.Assignment;
using RoutingRules.Model;
using RoutingRules.Testing;

namespace RoutingRules.Tests.Assignment;

/// <summary>What must not change, or not get worse, when a show is told differently or asks for less.</summary>
[Trait("Speed", "slow")]
public sealed class RetoldShowsTests
{
    private static readonly RoutingEngine Engine = RoutingEngine.CreateBuilder().Build();

    [Property(MaxTest = 60)]
    public Property Names_do_not_matter() => Prop.ForAll(TinyInstances.Arbitrary, tiny => Same(tiny, Renamed(tiny.Show), tiny.Options));

    [Property(MaxTest = 60)]
    public Property A_device_that_nothing_uses_does_not_matter() =>
        Prop.ForAll(
            TinyInstances.Arbitrary,
            tiny => Same(tiny, WithSpareDevice(tiny.Show, atEnd: true), tiny.Options) && Same(tiny, WithSpareDevice(tiny.Show, atEnd: false), tiny.Options)
        );

    // With a patch, which of two equal places a demand is said to have already depends on the order of devices.
    [Property(MaxTest = 60)]
    public Property The_order_of_devices_does_not_matter_while_nothing_is_patched() =>
        Prop.ForAll(
            TinyInstances.Arbitrary.Generator.Select(Unpatched).ToArbitrary(),
            tiny => Same(tiny, tiny.Show with { Rig = tiny.Show.Rig with { Devices = tiny.Show.Rig.Devices.Reverse().ToValueList() } }, tiny.Options)
        );

    // A hold that becomes possible is a new demand, so that shows are taken without a patch. A pin that becomes possible must stand, whatever a more
    // important demand loses by it, so that pins and what may bar them do not go together. A dead point that comes alive again must be silent, so that it
    // is no pure relaxation either.
    [Property(MaxTest = 60)]
    public Property Asking_for_less_never_makes_it_worse() =>
        Prop.ForAll(
            TinyInstances.Arbitrary.Generator.Select(Unpatched).ToArbitrary(),
            tiny => Relaxations(tiny).All(relaxed => IsNoWorse(tiny, relaxed.Show, relaxed.Options))
        );

    [Fact]
    public void Known_shows_ask_for_enough_to_make_less_of_it_worth_trying()
    {
        var (fewer, better) = (0, 0);
        var wrong = new List<string>();
        for (var seed = 0; seed < 150; seed++)
        {
            var tiny = Unpatched(TinyInstances.Make(seed));
            foreach (var (name, show, options) in Relaxations(tiny))
            {
                if (!IsNoWorse(tiny, show, options))
                    wrong.Add($"{tiny}, less of {name}: {Engine.Assign(tiny.Show, tiny.Options).Objective} became {Engine.Assign(show, options).Objective}");
                fewer++;
                better += Engine.Assign(show, options).Objective?.ToString() != Engine.Assign(tiny.Show, tiny.Options).Objective?.ToString() ? 1 : 0;
            }
        }

        Assert.True(wrong.Count == 0, string.Join(Environment.NewLine, wrong));
        Assert.True(fewer > 100 && better > 10, $"{fewer} relaxations, {better} of them with another result");
    }

    [Fact]
    public void One_more_feed_moves_nothing_where_it_fits_beside_what_stays()
    {
        var tried = 0;
        for (var seed = 0; seed < 200; seed++)
        {
            var tiny = TinyInstances.Make(seed);
            var before = Engine.Assign(tiny.Show, tiny.Options);
            if (before.Objective is null || tiny.Show.Feeds.IsEmpty || !before.Unplaced.IsEmpty)
                continue;

            var more = WithOneMore(before.Show);
            var held = Engine.Assign(more with { Feeds = more.Feeds.Select(feed => feed with { Hold = true }).ToValueList() }, tiny.Options);
            var free = Engine.Assign(more, tiny.Options);
            if (
                held.Objective is null
                || free.Objective is null
                || held.Moved.Count > 0
                || !held.Objective.Values.Take(4).SequenceEqual(free.Objective.Values.Take(4))
                || held.Objective.Values.Take(4).Sum() != before.Objective.Values.Take(4).Sum()
            )
                continue;

            tried++;
            Assert.True(free.Moved.IsEmpty, $"{tiny}: {string.Join(", ", free.Moved)} moved");
            Assert.Equal(Plugged(more, before), Plugged(more, free));
        }

        Assert.True(tried >= 30, $"Only {tried} shows had room for one more feed.");
    }

    /// <summary>What stands where, the new feed left out; two feeds of one source are one signal, whichever is said to be at which output.</summary>
    private static IEnumerable<string> Plugged(Show show, AssignmentResult result)
    {
        var sources = show.Feeds.ToDictionary(feed => feed.Id.Value, feed => feed.Source.ToString());
        return result
            .Placements.Where(placement => !placement.Demand.StartsWith("one-more", StringComparison.Ordinal))
            .Select(placement => $"{sources.GetValueOrDefault(placement.Demand.Split('/')[0], placement.Demand)} at {placement.At}")
            .Order(StringComparer.Ordinal);
    }

    private static Show WithOneMore(Show show) =>
        show with
        {
            Feeds = show
                .Feeds.Append(
                    new Feed
                    {
                        Id = new("one-more"),
                        Role = FeedRole.Utility,
                        Source = show.Feeds[0].Source,
                        To = [new Destination { Devices = [show.Rig.Devices.First(device => device.Id.Value.StartsWith("box", StringComparison.Ordinal)).Id] }],
                    }
                )
                .ToValueList(),
        };

    private static TinyInstance Unpatched(TinyInstance tiny) => tiny with { Show = tiny.Show with { Patch = new Patch() } };

    private static bool Same(TinyInstance tiny, Show other, AssignmentOptions options)
    {
        var one = Engine.Assign(tiny.Show, tiny.Options);
        var two = Engine.Assign(other, options);
        return one.Objective?.ToString() == two.Objective?.ToString()
            && one.ProvenNumbers == two.ProvenNumbers
            && one.Placements.Count == two.Placements.Count
            && one.Contradictions.Count == two.Contradictions.Count;
    }

    private static bool IsNoWorse(TinyInstance tiny, Show relaxed, AssignmentOptions options)
    {
        var one = Engine.Assign(tiny.Show, tiny.Options);
        var two = Engine.Assign(relaxed, options);
        if (one.Objective is null)
            return true;

        return two.Objective is not null && two.Status == AssignmentStatus.Optimal && Compare(one, two, tiny) >= 0;
    }

    private static int Compare(AssignmentResult one, AssignmentResult two, TinyInstance tiny) =>
        StrategyComparison.Compare(Engine.Resolve(tiny.Show), one, two, tiny.Options.Order);

    private static IEnumerable<(string Name, Show Show, AssignmentOptions Options)> Relaxations(TinyInstance tiny)
    {
        var show = tiny.Show;
        if (show.Feeds.Any(feed => !feed.SeparateFrom.IsEmpty || feed.Spread) && !show.Feeds.Any(IsPinned))
            yield return (
                "separations",
                show with
                {
                    Feeds = show.Feeds.Select(feed => feed with { SeparateFrom = [], Spread = false }).ToValueList(),
                },
                tiny.Options
            );
        if (!show.Rig.Reserved.IsEmpty && !show.Feeds.Any(IsPinned))
            yield return ("reserved", show with { Rig = show.Rig with { Reserved = [] } }, tiny.Options);
        if (tiny.Options.Spares > 0 || tiny.Options.Headroom > 0)
            yield return ("spares and headroom", show, tiny.Options with { Spares = 0, Headroom = 0 });
        if (show.Feeds.Any(feed => feed.Set is not null || feed.Group is not null || feed.Preferred is not null))
            yield return (
                "wishes",
                show with
                {
                    Feeds = show.Feeds.Select(feed => feed with { Set = null, Part = null, Group = null, Preferred = null }).ToValueList(),
                },
                tiny.Options
            );
    }

    private static bool IsPinned(Feed feed) => feed.To.Any(to => to.At is not null);

    /// <summary>Every feed and line with a name that sorts the other way round, every set and group with another.</summary>
    private static Show Renamed(Show show)
    {
        var names = show.Feeds.Index().ToDictionary(entry => entry.Item.Id, entry => new Id<Feed>($"{(char)('z' - entry.Index)}-other"));
        return show with
        {
            Feeds = show
                .Feeds.Select(feed =>
                    feed with
                    {
                        Id = names[feed.Id],
                        SeparateFrom = feed
                            .SeparateFrom.Select(separation => separation with { Feed = names.GetValueOrDefault(separation.Feed, separation.Feed) })
                            .ToValueList(),
                        BackupOf = feed.BackupOf is { } backup ? names.GetValueOrDefault(backup, backup) : null,
                        Set = feed.Set is { } set ? "other-" + set : null,
                        Group = feed.Group is { } group ? "other-" + group : null,
                    }
                )
                .ToValueList(),
            Lines = show.Lines.Index().Select(entry => entry.Item with { Id = new($"{(char)('z' - entry.Index)}-line") }).ToValueList(),
        };
    }

    private static Show WithSpareDevice(Show show, bool atEnd)
    {
        var spare = new Device { Id = new("spare-box"), Profile = SmallProfiles.Box.Id };
        return show with
        {
            Rig = show.Rig with
            {
                Devices = atEnd ? show.Rig.Devices.Append(spare).ToValueList() : show.Rig.Devices.Prepend(spare).ToValueList(),
                Profiles = show.Rig.Profiles.Append(SmallProfiles.Box).DistinctBy(profile => profile.Id).ToValueList(),
            },
        };
    }
}
