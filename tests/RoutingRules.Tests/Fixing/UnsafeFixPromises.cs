using RoutingRules.Fixing;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Tests.Diagnosis;
using RoutingRules.Verification;

namespace RoutingRules.Tests.Fixing;

/// <summary>
/// Mending with unsafe fixes takes from nobody what he wants and gets: judged by the trace of the verifier, which shares no code with fixes and rules.
/// </summary>
[Trait("Speed", "slow")]
public sealed class UnsafeFixPromises
{
    private const int Seed = 20;

    [Fact]
    public void Nothing_that_arrives_is_silenced_in_shows_with_a_planted_fault()
    {
        var shows = CleanShows.All(12, Seed);
        var taken = 0;
        var checkedWishes = 0;
        foreach (var fault in FaultTable.Kinds)
        {
            for (var n = 0; n < 6; n++)
            {
                var clean = shows[(n * 7) % shows.Count];
                if (fault.Plant(clean, new Lot((Seed * 1000) + n)) is { } faulty)
                {
                    var (applied, wishes) = Keeps(CleanShows.Engine, faulty, $"{fault.Kind} [{n}] {clean.Title}");
                    taken += applied;
                    checkedWishes += wishes;
                }
            }
        }

        Assert.True(taken > 60, $"only {taken} fixes were taken");
        Assert.True(checkedWishes > 200, $"only {checkedWishes} wishes were looked at");
    }

    [Fact]
    public void Nothing_that_arrives_is_silenced_where_several_faults_stand_together()
    {
        var shows = CleanShows.All(40, Seed);
        var taken = 0;
        var checkedWishes = 0;
        for (var n = 0; n < 160; n++)
        {
            var lot = new Lot((Seed * 2000) + n);
            var show = shows[n % shows.Count];
            for (var faults = 0; faults < 4; faults++)
            {
                show = lot.Pick(FaultTable.Kinds).Plant(show, lot) ?? show;
            }

            var (applied, wishes) = Keeps(CleanShows.Engine, show, $"four faults [{n}] {show.Title}");
            taken += applied;
            checkedWishes += wishes;
        }

        Assert.True(taken > 60, $"only {taken} fixes were taken");
        Assert.True(checkedWishes > 400, $"only {checkedWishes} wishes were looked at");
    }

    private static (int Applied, int Wishes) Keeps(RoutingEngine engine, Show show, string name)
    {
        var mended = engine.Fix(show, new FixOptions { IncludeUnsafe = true });
        if (mended.Applied.IsEmpty)
        {
            return (0, 0);
        }

        var profiles = engine.Resolve(show).Devices.GroupBy(device => device.Profile.Id).ToDictionary(group => group.Key, group => group.First().Profile);
        var before = Heard(show, profiles);
        var after = Heard(mended.Show, profiles);
        var still = Wishes(mended.Show).ToHashSet();
        foreach (var wish in before.Where(still.Contains))
        {
            Assert.True(after.Contains(wish), $"{name}: {wish} is lost by {string.Join("; ", mended.Applied.Select(fix => fix.Fix.Title))}");
        }

        return (mended.Applied.Count, before.Count);
    }

    private static IEnumerable<(string Id, PointRange From, PointRange To)> Wishes(Show show) =>
        show
            .Feeds.SelectMany(feed => feed.To.Where(to => to.At is not null).Select(to => (feed.Id.Value, feed.Source, to.At!.Value)))
            .Concat(show.Lines.Where(line => line.From?.At.Count == 1).SelectMany(line => line.To.Select(to => (line.Id.Value, line.From!.At[0], to))));

    private static HashSet<(string Id, PointRange From, PointRange To)> Heard(Show show, Dictionary<Id<DeviceProfile>, DeviceProfile> profiles)
    {
        var rig = new RigFacts(show, id => profiles.GetValueOrDefault(id), []);
        var trace = new PatchTrace(rig, show.Patch);
        return [.. Wishes(show).Where(wish => trace.Carries(wish.To, wish.From))];
    }
}
