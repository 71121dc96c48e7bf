using RoutingRules.Checking.Rules.Lines;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Rules;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Checking.Rules.Lines;

public sealed class IsolationMissingTests
{
    private static readonly IsolationMissing Rule = new();

    private static Show Powered(Show show, params (string Device, string Supply)[] supplies) =>
        show with
        {
            Rig = show.Rig with
            {
                Devices = show
                    .Rig.Devices.Select(device =>
                        supplies.FirstOrDefault(supply => supply.Device == device.Id.Value) is { Supply: { } name }
                            ? device with
                            {
                                Power = [new(name)],
                            }
                            : device
                    )
                    .ToValueList(),
            },
        };

    [Fact]
    public void A_second_direct_leg_of_a_split_is_noted()
    {
        var show = LineRig.Show().Cables(Cable("split/one/1", "box/in/1"), Cable("split/two/1", "mon/in/1"));

        Expect.One(
            Rule,
            show,
            Severity.Note,
            "/rig/devices/3",
            "The legs split/one and split/two of split 'split' go on without isolation; one direct leg at most.",
            "split=split",
            "leg=split/one",
            "leg=split/two"
        );
        Expect.None(Rule, Powered(show, ("split", "a"), ("mon", "a"), ("box", "b")));
    }

    [Fact]
    public void One_direct_leg_and_a_transformer_at_either_end_are_fine()
    {
        Expect.None(Rule, LineRig.Show().Cables(Cable("split/one/1-2", "box/in/1-2")));
        Expect.None(Rule, LineRig.Show().Cables(Cable("split/one/1", "box/in/1"), Cable("split/isolated/1", "mon/in/1")));
    }

    [Theory]
    [InlineData("record", "recording")]
    [InlineData("broadcast", "broadcast")]
    public void A_feed_for_recording_or_broadcast_at_a_plain_output_is_noted(string role, string what)
    {
        var show = LineRig.Show() with { Feeds = [Feed("ob", new FeedRole(role), "desk/main/1", "desk/out/1")] };

        Expect.One(Rule, show, Severity.Note, "/feeds/0", $"'ob' leaves at desk/out/1 for {what} without isolation.", "feed=ob", "at=desk/out/1");
        Expect.None(Rule, show with { Feeds = [show.Feeds[0] with { Role = FeedRole.Fill }] });
        Expect.None(Rule, Changed(show, group => group with { Isolated = true }));
        Expect.None(Rule, Changed(show, group => group with { Level = SignalLevel.Aes3 }));
        Expect.None(Rule, Powered(show.Cables(Cable("desk/out/1", "mon/in/1")), ("desk", "a"), ("mon", "a")));
        Assert.Single(RuleTester.Findings(Rule, Powered(show.Cables(Cable("desk/out/1", "mon/in/1")), ("desk", "a"), ("mon", "b"))));
    }

    private static Show Changed(Show show, Func<PortGroup, PortGroup> output) =>
        show with
        {
            Rig = show.Rig with
            {
                Profiles = show
                    .Rig.Profiles.Select(profile =>
                        profile with
                        {
                            PortGroups = profile.PortGroups.Select(group => group.Kind == PortKind.Output ? output(group) : group).ToValueList(),
                        }
                    )
                    .ToValueList(),
            },
        };
}
