using RoutingRules.Checking.Rules.Networks;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Rules;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;
using static RoutingRules.Tests.Checking.Rules.Networks.NetworkShow;

namespace RoutingRules.Tests.Checking.Rules.Networks;

public sealed class MulticoreEndsDifferTests
{
    private static readonly MulticoreEndsDiffer Rule = new();

    private static DeviceProfile End(int channels) =>
        new()
        {
            Id = new($"test/end-{channels}"),
            Kind = DeviceKind.StageBox,
            Name = "End",
            PortGroups =
            [
                SmallProfiles.Group("send", PortKind.Transmit, channels) with
                {
                    Carrier = new(new("jack"), 1, 1),
                },
                SmallProfiles.Group("take", PortKind.Receive, channels) with
                {
                    Carrier = new(new("jack"), 1, 1),
                },
                SmallProfiles.Group("jack", PortKind.Network, 1),
            ],
        };

    private static Show Joined(int one, int other) =>
        Of(("one", End(one)), ("other", End(other))).With(Link("core", "one/jack/1", "other/jack/1")).With(Transport.PointToPoint);

    // AES10: 56 channels with varispeed and 64 without; 28 at double rate, and 32 (from memory).
    [Fact]
    public void Ends_of_56_and_64_channels_are_noted()
    {
        Expect.One(Rule, Joined(64, 56), Severity.Note, "/rig/links/0", "Link 'core' has 64 channels at one/jack/1 and 56 at other/jack/1.", "link=core");
        Assert.Single(RuleTester.Findings(Rule, Joined(28, 32)));
    }

    [Fact]
    public void Equal_ends_other_numbers_and_streams_are_fine()
    {
        Expect.None(Rule, Joined(64, 64) with { Title = "Equal" });
        Expect.None(Rule, Joined(64, 16));
        Assert.Equal(RuleStatus.NotApplicable, Assert.Single(RuleTester.Run(Rule, Boxes("a").With(Link("l", "desk/net/1", "a/net/1"))).Rules).Status);
    }
}
