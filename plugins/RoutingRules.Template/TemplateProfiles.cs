using System.Text;
using RoutingRules.Model;
using RoutingRules.Profiles;

namespace RoutingRules.Template;

/// <summary>One profile, written as a document.</summary>
public sealed class TemplateProfiles : ProfileSource
{
    private const string Tiny = """
        {
          "id": "template/stage-box-tiny", "version": 1, "kind": "stage-box", "name": "Stage box, 4 in, 4 out",
          "portGroups": [
            { "id": "in", "kind": "input", "count": 4, "connector": "xlr-socket", "level": "mic", "phantom": true },
            { "id": "out", "kind": "output", "count": 4, "connector": "xlr-pins", "level": "line" },
            { "id": "transmit", "kind": "transmit", "count": 4, "blockSize": 4 },
            { "id": "receive", "kind": "receive", "count": 4, "blockSize": 4 },
            { "id": "net", "kind": "network", "count": 1, "connector": "rj45" }
          ],
          "routing": [ { "from": "in", "to": "transmit", "mode": "fixed" }, { "from": "receive", "to": "out", "mode": "fixed", "clearable": false } ],
          "factoryRoutes": [],
          "limits": { "streamsSent": 1, "streamsReceived": 1, "labelLength": 8 },
          "sampleRates": [ 48000 ]
        }
        """;

    private static readonly Id<DeviceProfile> TinyId = new("template/stage-box-tiny");

    /// <inheritdoc/>
    public override string Name => "template";

    /// <inheritdoc/>
    public override IReadOnlyList<Id<DeviceProfile>> Ids => [TinyId];

    /// <inheritdoc/>
    public override bool TryFind(Id<DeviceProfile> id, out ReadOnlyMemory<byte> json)
    {
        json = id == TinyId ? Encoding.UTF8.GetBytes(Tiny) : default;
        return id == TinyId;
    }
}
