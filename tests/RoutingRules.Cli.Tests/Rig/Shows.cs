namespace RoutingRules.Cli.Tests.Rig;

/// <summary>Shows as text for tests of the tool.</summary>
internal static class Shows
{
    /// <summary>A console and a box, one monitor pinned to the box, everything patched.</summary>
    public const string Small = """
        {
          "schemaVersion": 1,
          "title": "Small",
          "rig": {
            "networks": [ { "id": "audio", "transport": "rtp-l24", "packetMicroseconds": 1000 } ],
            "devices": [
              { "id": "desk", "profile": "generic/console-small" },
              { "id": "box", "profile": "generic/stage-box-small" }
            ]
          },
          "feeds": [
            { "id": "mon", "name": "Monitor", "role": "monitor", "source": "desk/aux/1", "to": [ { "at": "box/out/1" } ] }
          ],
          "patch": {
            "streams": [ { "id": "s1", "network": "audio", "from": "desk/transmit/1-8", "to": [ { "at": "box/receive/1-4", "channels": "1-4" } ] } ],
            "routes": [ { "from": "desk/aux/1", "to": "desk/transmit/1" }, { "from": null, "to": "desk/transmit/2-8" } ]
          }
        }
        """;
}
