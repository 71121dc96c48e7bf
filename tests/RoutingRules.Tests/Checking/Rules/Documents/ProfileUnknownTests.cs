using System.Text;
using RoutingRules.Checking.Rules.Documents;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Rules;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Checking.Rules.Documents;

public sealed class ProfileUnknownTests
{
    private static readonly ProfileUnknown Rule = new();

    private static Show WithoutProfiles(params string[] ids)
    {
        var show = Of([.. ids.Select(id => (id, SmallProfiles.Box))]);
        return show with { Rig = show.Rig with { Profiles = [] } };
    }

    [Fact]
    public void A_profile_that_is_nowhere_gives_one_finding() =>
        Expect.One(
            Rule,
            WithoutProfiles("box"),
            Severity.Error,
            "/rig/devices/0/profile",
            "The profile 'test/box' of device 'box' is not known; what these connectors are cannot be told.",
            "profile=test/box"
        );

    [Fact]
    public void Three_devices_of_one_unknown_profile_give_one_finding()
    {
        var show = WithoutProfiles("a", "b", "c");
        show = show with { Rig = show.Rig with { Devices = [show.Rig.Devices[0] with { Label = "SR box" }, show.Rig.Devices[1], show.Rig.Devices[2]] } };

        Expect.One(
            Rule,
            show,
            Severity.Error,
            "/rig/devices/0/profile",
            "The profile 'test/box' of devices 'SR box', 'b' and 'c' is not known; what these connectors are cannot be told.",
            "profile=test/box"
        );
    }

    [Fact]
    public void A_profile_written_into_the_show_gives_none() => Expect.None(Rule, Of(("box", SmallProfiles.Box)));

    [Fact]
    public void A_profile_that_cannot_be_read_says_so()
    {
        var finding = Assert.Single(RuleTester.Findings(Rule, WithoutProfiles("box"), new OneProfile("{ \"id\": 7 }")));

        Assert.Equal("The profile 'test/box' of device 'box' was found but cannot be read; its source must be mended.", finding.Message);
    }

    [Fact]
    public void A_rig_without_devices_is_not_applicable()
    {
        var show = Of() with { Rig = new() };

        Assert.Equal(RuleStatus.NotApplicable, Assert.Single(RuleTester.Run(Rule, show).Rules).Status);
    }

    private sealed class OneProfile(string json) : ProfileSource
    {
        public override string Name => "one";

        public override IReadOnlyList<Id<DeviceProfile>> Ids => [new("test/box")];

        public override bool TryFind(Id<DeviceProfile> id, out ReadOnlyMemory<byte> found)
        {
            found = id == Ids[0] ? Encoding.UTF8.GetBytes(json) : default;
            return id == Ids[0];
        }
    }
}
