using System.Text;
using RoutingRules.Documents;
using RoutingRules.Model;
using RoutingRules.Reports.Lists;

namespace RoutingRules.Tests.Reports.Lists;

/// <summary>The show that lists are taken into.</summary>
internal static class ListImportShow
{
    public const string Text = """
        {
          "schemaVersion": 1,
          "title": "Lists",
          "rig": {
            "zones": [ { "id": "stage-left", "side": "house-right" } ],
            "devices": [ { "id": "desk", "profile": "generic/console-medium" }, { "id": "box", "profile": "generic/stage-box-medium" } ]
          },
          "feeds": [
            { "id": "main-l", "name": "Main L", "role": "main", "source": "desk/main/1",
              "to": [ { "at": "box/out/1", "extensions": { "tool": { "colour": 3 } } }, { "zones": [ "stage-left" ], "devices": [ "box" ] } ],
              "separateFrom": [ { "feed": "ears", "by": "power" } ], "extensions": { "tool": true } },
            { "id": "ears",   "name": "Ears", "role": "in-ear", "source": "desk/aux/9-10", "to": [ { "devices": [ "box" ] } ], "limiter": true }
          ],
          "lines": [
            { "id": "keys", "name": "Keys", "kind": "line", "width": 2, "from": { "at": [ "box/in/9-10" ], "extensions": { "a": 1 } },
              "to": [ "desk/channel/9-10" ] },
            { "id": "radio", "kind": "line", "from": { "source": "desk/aux/18" }, "to": [ "desk/channel/11" ] }
          ]
        }
        """;

    public static readonly Show Before = ShowReader.Read(Encoding.UTF8.GetBytes(Text)).Value!;

    public static ListImportResult Import(string list, ListImportOptions? options = null) =>
        ListImport.Read(Before, Encoding.UTF8.GetBytes(list), IntentList.Feeds, options);
}
