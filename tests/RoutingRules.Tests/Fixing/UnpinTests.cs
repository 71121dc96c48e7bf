using RoutingRules.Documents;
using RoutingRules.Model;
using RoutingRules.Profiles.Generic;

namespace RoutingRules.Tests.Fixing;

public class UnpinTests
{
    private static readonly RoutingEngine Engine = RoutingEngine.CreateBuilder().AddProfiles(new GenericProfiles()).Build();

    [Theory]
    [InlineData("02-club-night.show.json")]
    [InlineData("03-two-boxes.show.json")]
    [InlineData("04-festival.show.json")]
    public void What_was_let_go_stays_where_it_is_when_nothing_speaks_against_that(string example)
    {
        var show = Engine.Assign(Read(example)).Show;
        var pinned = Engine.Pin(show).Show;

        var free = Engine.Unpin(pinned);

        Assert.NotEmpty(free.Freed);
        var result = Engine.Assign(free.Show);
        Assert.Equal(
            Engine.Assign(pinned).Placements.Select(placement => (placement.Demand, placement.At)),
            result.Placements.Select(placement => (placement.Demand, placement.At))
        );
        Assert.Empty(result.Unplaced);
    }

    [Fact]
    public void Only_what_is_named_is_let_go()
    {
        var result = Engine.Unpin(Read("02-club-night.show.json"), ["kick", "main-l"]);

        Assert.Equal(["main-l/1", "kick"], result.Freed.Select(place => place.Demand));
        Assert.Equal(["box"], result.Show.Lines.Single(line => line.Id.Value == "kick").From.Devices.Select(id => id.Value));
        Assert.False(result.Show.Lines.Single(line => line.Id.Value == "snare").From.At.IsEmpty);
    }

    [Fact]
    public void The_legs_of_a_split_keep_their_points()
    {
        var club = Read("02-club-night.show.json");
        var split = club with { Lines = [club.Lines[0] with { From = new LineOrigin { At = [PointRange.Parse("box/in/1"), PointRange.Parse("desk/in/5")] } }] };

        var result = Engine.Unpin(split, [club.Lines[0].Id.Value]);

        Assert.Equal([club.Lines[0].Id.Value], result.Left);
        Assert.Empty(result.Edits);
    }

    [Fact]
    public void A_place_that_only_its_name_allows_stays_named()
    {
        var club = Read("02-club-night.show.json");
        var feed = club.Feeds[0] with { To = [new Destination { At = PointRange.Parse("desk/receive/33") }] };

        var result = Engine.Unpin(club with { Feeds = [feed] }, [feed.Id.Value]);

        Assert.Equal([$"{feed.Id.Value}/1"], result.Left);
        Assert.Empty(result.Freed);
    }

    private static Show Read(string example) => ShowReader.ReadFile(Path.Combine(AppContext.BaseDirectory, "examples", example)).Value!;
}
