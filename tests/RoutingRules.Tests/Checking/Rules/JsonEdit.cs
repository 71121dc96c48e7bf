using System.Text;
using System.Text.Json.Nodes;
using RoutingRules.Documents;
using RoutingRules.Model;

namespace RoutingRules.Tests.Checking.Rules;

/// <summary>Changes one text of a show by way of its JSON, so that a test proves its pointer as well.</summary>
internal static class JsonEdit
{
    /// <summary>Sets the text at a pointer and reads the show again.</summary>
    public static Show Set(Show show, string pointer, Func<string, string> change)
    {
        var root = JsonNode.Parse(ShowWriter.Text(show))!;
        var parts = pointer.Split('/')[1..];
        var node = root;
        foreach (var part in parts[..^1])
        {
            node = node is JsonArray array ? array[int.Parse(part)]! : node[part]!;
        }

        if (node is JsonArray list)
        {
            var index = int.Parse(parts[^1]);
            list[index] = change(list[index]!.GetValue<string>());
        }
        else
        {
            node[parts[^1]] = change(node[parts[^1]]!.GetValue<string>());
        }

        var read = ShowReader.Read(Encoding.UTF8.GetBytes(root.ToJsonString()));
        Assert.Empty(read.Findings);
        return read.Value!;
    }

    /// <summary>Makes the reference at a pointer name <c>x-9</c>, as a device, a port group or an id.</summary>
    public static Show Break(Show show, string pointer, string entity) =>
        Set(
            show,
            pointer,
            text =>
                entity switch
                {
                    "device=x-9" when text.Contains('/', StringComparison.Ordinal) => "x-9" + text[text.IndexOf('/', StringComparison.Ordinal)..],
                    _ when entity.StartsWith("group=", StringComparison.Ordinal) => text.Split('/')[0] + "/x-9/" + text.Split('/')[2],
                    _ => "x-9",
                }
        );
}
