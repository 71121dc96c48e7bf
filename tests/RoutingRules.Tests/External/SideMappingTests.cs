using RoutingRules.Checking.Rules.Feeds;
using RoutingRules.Documents;
using RoutingRules.Model;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.External;

/// <summary>Left and right of stage, house and console against published usage.</summary>
public sealed class SideMappingTests
{
    // Stage left and right are the performer's own, facing the audience; house left and right are the audience's: public theatre usage.
    // The left bus feeds house left: common practice, no source.
    [Theory]
    [InlineData("left", "stage right", true)]
    [InlineData("left", "stage left", false)]
    [InlineData("right", "stage left", true)]
    [InlineData("right", "stage right", false)]
    public void The_left_bus_belongs_stage_right_and_the_right_bus_stage_left(string part, string stageSide, bool isRight)
    {
        var show = Of(("desk", SmallProfiles.Console), ("here", SmallProfiles.Box), ("there", SmallProfiles.Box));
        var (here, there) = stageSide == "stage right" ? (ZoneSide.HouseLeft, ZoneSide.HouseRight) : (ZoneSide.HouseRight, ZoneSide.HouseLeft);
        show = show.With(Stream("s1", "desk/transmit/1-4", "here/receive/1-4")) with
        {
            Rig = show.Rig with
            {
                Zones = [new() { Id = new("h"), Side = here }, new() { Id = new("t"), Side = there }],
                Devices = [show.Rig.Devices[0], show.Rig.Devices[1] with { Zone = new("h") }, show.Rig.Devices[2] with { Zone = new("t") }],
            },
            Feeds = [Feed("pa", FeedRole.Main, "desk/aux/1", "here/out/1") with { Part = part }],
        };

        var findings = RuleTester.Findings(new SideMismatch(), show);

        Assert.Equal(isRight ? 0 : 1, findings.Count);
        Assert.All(findings, finding => Assert.Contains($"({stageSide})", finding.Message, StringComparison.Ordinal));
    }

    // The same usage, as documents write it: a zone names the side the audience sees.
    [Theory]
    [InlineData("house-left", "stage right")]
    [InlineData("house-right", "stage left")]
    public void A_document_that_says_house_is_told_in_stage_words_too(string side, string stageSide)
    {
        var document = $$"""
            {
              "schemaVersion": 1, "title": "Sides",
              "rig": {
                "zones": [ { "id": "one", "side": "{{side}}" }, { "id": "other", "side": "{{(side == "house-left" ? "house-right" : "house-left")}}" } ],
                "networks": [ { "id": "net", "transport": "rtp-l24", "packetMicroseconds": 1000 } ],
                "devices": [
                  { "id": "desk", "profile": "test/console" },
                  { "id": "a", "profile": "test/box", "zone": "one" }, { "id": "b", "profile": "test/box", "zone": "other" } ]
              },
              "feeds": [
                { "id": "pa", "role": "main", "part": "{{(side == "house-left" ? "right" : "left")}}", "source": "desk/aux/1",
                  "to": [ { "at": "a/out/1" } ] } ],
              "patch": { "streams": [ { "id": "s", "network": "net", "from": "desk/transmit/1-4", "to": [ { "at": "a/receive/1-4" } ] } ] }
            }
            """;
        var read = ShowReader.Read(System.Text.Encoding.UTF8.GetBytes(document));
        Assert.NotNull(read.Value);
        var show = read.Value with { Rig = read.Value.Rig with { Profiles = [SmallProfiles.Console, SmallProfiles.Box] } };

        var finding = Assert.Single(RuleTester.Findings(new SideMismatch(), show));

        Assert.Contains($"({stageSide})", finding.Message, StringComparison.Ordinal);
    }
}
