using System.Buffers;
using System.Text.Json;
using RoutingRules.Documents.Formats;
using RoutingRules.Model;

namespace RoutingRules.Fixing;

/// <summary>Elements of the lists of a show as JSON, as the tables of the format write them.</summary>
internal static class ElementJson
{
    public static JsonElement Of(object element)
    {
        var buffer = new ArrayBufferWriter<byte>();
        using (var json = new Utf8JsonWriter(buffer))
        {
            Write(json, element);
        }

        using var document = JsonDocument.Parse(buffer.WrittenMemory, new JsonDocumentOptions { MaxDepth = JsonPatchTarget.Depth });
        return document.RootElement.Clone();
    }

    private static void Write(Utf8JsonWriter json, object element)
    {
        switch (element)
        {
            case Route route:
                PatchTables.Route.Write(json, route);
                break;
            case AudioStream stream:
                PatchTables.Stream.Write(json, stream);
                break;
            case StreamReceiver receiver:
                PatchTables.Receiver.Write(json, receiver);
                break;
            case InputSettings input:
                PatchTables.Input.Write(json, input);
                break;
            case PointLabel label:
                PatchTables.Label.Write(json, label);
                break;
            case Cable cable:
                RigTables.Cable.Write(json, cable);
                break;
            case UnavailablePoints dead:
                RigTables.Unavailable.Write(json, dead);
                break;
            case ReservedPoints reserved:
                RigTables.Reserved.Write(json, reserved);
                break;
            case Network network:
                RigTables.Network.Write(json, network);
                break;
            case Link link:
                RigTables.Link.Write(json, link);
                break;
            case Clock clock:
                RigTables.Clock.Write(json, clock);
                break;
            case Feed feed:
                IntentTables.Feed.Write(json, feed);
                break;
            case Line line:
                IntentTables.Line.Write(json, line);
                break;
            default:
                throw new ArgumentException($"There is no list of {element.GetType().Name} to edit.", nameof(element));
        }
    }
}
