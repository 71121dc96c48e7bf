using System.Text;
using RoutingRules.Documents;
using RoutingRules.Documents.Tables;
using RoutingRules.Model;
using RoutingRules.Reading;
using RoutingRules.Rules;

namespace RoutingRules.Tests.Documents;

/// <summary>Small documents for reader tests.</summary>
internal static class Sample
{
    /// <summary>A show with at least one entry in most lists.</summary>
    public const string Show = """
        {
          "schemaVersion": 1,
          "title": "Tidewater Folk", "venue": "Old Ferry Yard", "date": "2027-06-12", "revision": "C",
          "rig": {
            "zones": [ { "id": "stage-right", "side": "house-left", "walk": 1, "near": [ "riser" ] }, { "id": "riser" } ],
            "clocks": [ { "id": "c1", "sampleRate": 48000, "leader": "desk" } ],
            "networks": [ { "id": "audio", "transport": "rtp-l24", "packetMicroseconds": 1000, "clock": "c1" } ],
            "devices": [
              { "id": "desk", "profile": "generic/console-medium", "power": [ "ups-1" ] },
              { "id": "box-r", "profile": "generic/stage-box-medium", "zone": "stage-right", "label": "SR box" }
            ],
            "links": [ { "id": "trunk", "network": "audio", "from": "desk/net/1", "to": "box-r/net/1", "medium": "copper-solid",
              "lengthMetres": 70.5, "speedMbps": 1000 } ],
            "cables": [ { "from": "box-r/out/1-2", "to": "amp-r/in/1-2", "way": "loom B 1-2" } ],
            "unavailable": [ { "at": "box-r/in/7", "reason": "crackles", "since": "2027-06-11" } ],
            "reserved": [ { "at": "box-r/out/8" } ]
          },
          "feeds": [
            { "id": "main-l", "role": "main", "set": "main", "part": "left", "source": "desk/main/1", "to": [ { "zones": [ "stage-right" ] } ],
              "priority": "critical" },
            { "id": "ears-1", "role": "in-ear", "source": "desk/aux/9-10", "to": [ { "at": "box-r/out/3-4" } ], "limiter": true,
              "separateFrom": [ { "feed": "main-l", "by": "power" } ] }
          ],
          "lines": [
            { "id": "keys", "kind": "line", "phantom": "forbidden", "width": 2, "from": { "at": [ "box-r/in/9-10" ] }, "to": [ "desk/channel/9-10" ] }
          ],
          "patch": {
            "streams": [ { "id": "s1", "network": "audio", "from": "desk/transmit/1-8", "to": [ { "at": "box-r/receive/1-4", "channels": "1-4" } ] } ],
            "routes": [ { "from": "desk/matrix/1", "to": "desk/transmit/5" }, { "from": null, "to": "desk/transmit/4" } ],
            "inputs": [ { "at": "box-r/in/9-10", "phantom": false, "gainOwner": "desk" } ],
            "labels": [ { "at": "desk/channel/9", "text": "KEYS" } ]
          },
          "extensions": { "x-planner": { "colour": [ 1, 2 ] } }
        }
        """;

    /// <summary>A show with the given text in place of its rig.</summary>
    public static string WithRig(string rig) => $$"""{"schemaVersion":1,"title":"t","rig":{{rig}}}""";

    /// <summary>A show with the given text in place of the whole feeds list.</summary>
    public static string WithFeeds(string feeds) => $$"""{"schemaVersion":1,"title":"t","rig":{},"feeds":{{feeds}}}""";

    /// <summary>A show with the given text in place of the whole lines list.</summary>
    public static string WithLines(string lines) => $$"""{"schemaVersion":1,"title":"t","rig":{},"lines":{{lines}}}""";

    /// <summary>A show with the given text in place of the patch.</summary>
    public static string WithPatch(string patch) => $$"""{"schemaVersion":1,"title":"t","rig":{},"patch":{{patch}}}""";

    public static ReadResult<Show> Read(string text, ReadLimits? limits = null) => ShowReader.Read(Encoding.UTF8.GetBytes(text), limits);

    /// <summary>The one finding that reading gives.</summary>
    public static Finding OneFinding(string text, ReadLimits? limits = null)
    {
        var read = Read(text, limits);
        Assert.False(read.IsUsable);
        return Assert.Single(read.Findings);
    }

    /// <summary>The show when nothing is wrong.</summary>
    public static Show Good(string text)
    {
        var read = Read(text);
        Assert.Empty(read.Findings);
        Assert.True(read.IsUsable);
        return read.Value!;
    }
}
