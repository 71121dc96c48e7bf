using FsCheck;
using FsCheck.Fluent;
using RoutingRules.Documents;
using RoutingRules.Model;
using RoutingRules.Planning.NewShows;
using RoutingRules.Profiles.Generic;
using RoutingRules.Rules;
using RoutingRules.Testing;

namespace RoutingRules.Tests.Diagnosis;

/// <summary>Shows in which nothing is graver than a note, to plant faults in.</summary>
internal static class CleanShows
{
    public static RoutingEngine Engine { get; } = RoutingEngine.CreateBuilder().AddProfiles(new GenericProfiles()).Build();

    /// <summary>The examples as they are patched, new shows, and so many generated ones.</summary>
    public static List<Show> All(int generated, int seed)
    {
        var shows = new List<Show>
        {
            Read("02-club-night.show.json"),
            Engine.Assign(Read("03-two-boxes.show.json")).Show,
            Engine.Assign(Read("04-festival.show.json")).Show,
            Read("festival-by-hand.show.json"),
        };
        foreach (var options in Starters())
        {
            if (ShowStarter.Start(Engine, options).Show is { } show)
            {
                shows.Add(show);
            }
        }

        shows.AddRange(ShowArbitraries.Clean().Generator.Sample(60, new Rnd((ulong)seed), generated).Select(clean => clean.Show));
        shows.AddRange(shows.ConvertAll(Pinned));
        return shows.FindAll(show => Engine.Check(show).Worst is null or Severity.Note);
    }

    /// <summary>The show with every place it has written down.</summary>
    public static Show Pinned(Show show) => Engine.Pin(show).Show with { Title = show.Title + ", pinned" };

    private static IEnumerable<StarterOptions> Starters()
    {
        foreach (var boxes in new[] { 1, 2, 3 })
        {
            foreach (var (monitors, ears) in new[] { (2, 0), (4, 3), (6, 4) })
            {
                yield return new StarterOptions
                {
                    Console = new("generic/console-medium"),
                    Boxes = [.. Enumerable.Repeat(new StarterBox { Profile = new("generic/stage-box-large") }, boxes)],
                    Amplifier = new("generic/amplifier-4"),
                    EarRack = new("generic/ear-rack-8"),
                    Switch = new("generic/network-switch-10"),
                    Mains = boxes == 1 ? 2 : 3,
                    Subs = boxes > 1 ? 1 : 0,
                    Monitors = monitors,
                    InEars = ears,
                    Vocals = 3,
                    Microphones = 6,
                    PhantomLines = 3,
                    StereoLines = 2,
                };
            }
        }
    }

    private static Show Read(string name) => ShowReader.ReadFile(Path.Combine(AppContext.BaseDirectory, "examples", name)).Value!;
}
