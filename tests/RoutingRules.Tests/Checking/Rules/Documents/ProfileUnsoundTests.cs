using RoutingRules.Checking.Rules.Documents;
using RoutingRules.Documents;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Rules;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Checking.Rules.Documents;

public sealed class ProfileUnsoundTests
{
    private static readonly ProfileUnsound Rule = new();

    private static DeviceProfile Unsound => SmallProfiles.Box with { FactoryRoutes = [SmallProfiles.Factory("in", 1, 2, "monitor", 1)] };

    [Fact]
    public void A_profile_that_speaks_of_a_missing_group_gives_one_finding() =>
        Expect.One(
            Rule,
            Of(("desk", SmallProfiles.Console), ("box", Unsound)),
            Severity.Error,
            "/rig/profiles/1/factoryRoutes/0/to",
            "The profile 'test/box' of device 'box' contradicts itself. The profile has no port group 'monitor'.",
            "profile=test/box",
            "place=/factoryRoutes/0/to"
        );

    [Fact]
    public void Two_devices_and_two_problems_are_one_finding()
    {
        var profile = Unsound with { LatencyMilliseconds = [new() { Group = new("nowhere"), Value = 1 }] };

        Expect.One(
            Rule,
            Of(("a", profile), ("b", profile)),
            Severity.Error,
            "/rig/profiles/0/factoryRoutes/0/to",
            "The profile 'test/box' of device 'a' contradicts itself. The profile has no port group 'monitor'. There is one more problem.",
            "profile=test/box",
            "place=/factoryRoutes/0/to",
            "place=/latencyMilliseconds/0/group"
        );
    }

    [Fact]
    public void A_profile_from_a_source_is_pointed_at_through_its_device()
    {
        var show = Of(("desk", SmallProfiles.Console), ("box", Unsound));
        show = show with { Rig = show.Rig with { Profiles = [SmallProfiles.Console] } };

        Assert.Equal("/rig/devices/1/profile", Assert.Single(RuleTester.Findings(Rule, show, new Written(Unsound))).Pointer);
    }

    [Fact]
    public void Blocks_that_do_not_fill_the_group_are_unsound()
    {
        // AMWA IS-08 v1.0.1, docs/Behaviour.md, Channel Block Sizes: all blocks have one size and every channel is in one.
        var profile = new DeviceProfile
        {
            Id = new("test/odd"),
            Kind = DeviceKind.Processor,
            Name = "Odd",
            PortGroups = [SmallProfiles.Group("bus", PortKind.Source, 12), SmallProfiles.Group("out", PortKind.Output, 8)],
            Routing = [SmallProfiles.Entry("bus", "out", RoutingMode.Block) with { BlockSize = 8 }],
        };

        Expect.One(
            Rule,
            Of(("odd", profile)),
            Severity.Error,
            "/rig/profiles/0/routing/0/blockSize",
            "The profile 'test/odd' of device 'odd' contradicts itself. Port group 'bus' has 12 points, which is not a whole number of blocks of 8.",
            "profile=test/odd",
            "place=/routing/0/blockSize"
        );
    }

    [Fact]
    public void Sound_profiles_give_none() => Expect.None(Rule, Of([.. SmallProfiles.All.Select((profile, index) => ($"d{index}", profile))]));

    private sealed class Written(DeviceProfile profile) : ProfileSource
    {
        public override string Name => "written";

        public override IReadOnlyList<Id<DeviceProfile>> Ids => [profile.Id];

        public override bool TryFind(Id<DeviceProfile> id, out ReadOnlyMemory<byte> json)
        {
            json = id == profile.Id ? ProfileWriter.ToUtf8(profile) : default;
            return id == profile.Id;
        }
    }
}
