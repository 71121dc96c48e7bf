using RoutingRules.Model;
using RoutingRules.Planning;
using RoutingRules.Planning.Losses;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Planning.Losses;

/// <summary>A main at one box, its backup at a second one and the backup of that at a third; the first two boxes hang on one supply.</summary>
public sealed class BackupChainTests
{
    private static readonly RoutingEngine Engine = RoutingEngine.CreateBuilder().Build();

    private static Show Chain(string? mainBacksUp = null)
    {
        var show = Of(("desk", SmallProfiles.Console), ("a", SmallProfiles.Box), ("b", SmallProfiles.Box), ("c", SmallProfiles.Box))
            .With(Stream("s", "desk/transmit/1-4", "a/receive/1-4", "b/receive/1-4", "c/receive/1-4"))
            .With(Route("desk/main/1", "desk/transmit/1"), Route(null, "desk/transmit/2-4"));
        return show with
        {
            Rig = show.Rig with
            {
                Devices = show.Rig.Devices.Select(device => device with { Power = device.Id.Value is "a" or "b" ? [new("stage")] : [] }).ToValueList(),
            },
            Feeds =
            [
                Feed("main", FeedRole.Main, "desk/main/1", "a/out/1") with
                {
                    BackupOf = mainBacksUp is null ? null : new Id<Feed>(mainBacksUp),
                },
                Feed("second", FeedRole.Fill, "desk/main/1", "b/out/1") with
                {
                    BackupOf = new Id<Feed>("main"),
                },
                Feed("third", FeedRole.Fill, "desk/main/1", "c/out/1") with
                {
                    BackupOf = new Id<Feed>("second"),
                },
            ],
        };
    }

    private static ImpactAnswer Ask(Show show, params LossKind[] kinds) =>
        Engine.Impact(
            show,
            new ImpactOptions
            {
                Recovery = false,
                SetSize = 3,
                Kinds = kinds.ToValueList(),
            }
        );

    // The third feed backs up the main as well, also where the three back each other up in a ring.
    [Theory]
    [InlineData(null)]
    [InlineData("third")]
    public void The_backup_of_a_backup_goes_on_for_the_main(string? mainBacksUp)
    {
        var stage = Assert.Single(Ask(Chain(mainBacksUp), LossKind.Power).Losses);

        Assert.Equal(
            ["main BackedUp by third", "second BackedUp by third"],
            stage.Subjects.Select(lost => $"{lost.Subject} {lost.Fate} by {string.Join(' ', lost.Backups)}").Order(StringComparer.Ordinal)
        );
        Assert.False(stage.IsSinglePoint);
        Assert.Empty(stage.Silences);
    }

    [Fact]
    public void Nearer_backups_are_named_before_those_of_backups()
    {
        var a = Ask(Chain(), LossKind.Device).Losses.Single(loss => loss.Lost[0].Id == "a");

        Assert.Equal(["second", "third"], Assert.Single(a.Subjects).Backups);
    }

    [Fact]
    public void A_main_is_silent_only_when_the_whole_chain_is()
    {
        var main = Ask(Chain(), LossKind.Device).FailureSets.Single(sets => sets.Feed == "main");

        Assert.Equal(["desk", "a+b+c"], main.Sets.Select(set => string.Join('+', set.Select(thing => thing.Id))));
    }

    // A loss of the third box leaves the main and its backup alone: backing up goes one way.
    [Fact]
    public void What_is_backed_up_does_not_back_up()
    {
        var c = Ask(Chain(), LossKind.Device).Losses.Single(loss => loss.Lost[0].Id == "c");

        Assert.Equal(["third Lost by "], c.Subjects.Select(lost => $"{lost.Subject} {lost.Fate} by {string.Join(' ', lost.Backups)}"));
    }
}
