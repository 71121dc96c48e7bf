using System.Text;
using System.Text.Json.Nodes;
using RoutingRules.Documents;
using RoutingRules.Fixing;
using RoutingRules.Model;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Fixing;

/// <summary>What edits leave of the layout of a document.</summary>
public sealed class ShowTextTests
{
    private const string Head = "{\n  \"schemaVersion\": 1, \"title\": \"T\",\n  \"rig\":   {},\n";

    private static readonly Route First = Route("desk/aux/1", "desk/transmit/1");
    private static readonly Route Second = Route("desk/aux/2", "desk/transmit/2");
    private static readonly Route New = Route(null, "desk/transmit/9");

    private const string OnLines =
        Head
        + "  \"patch\": { \"routes\": [\n    { \"from\":\"desk/aux/1\",\"to\":\"desk/transmit/1\" },\n    {\"to\": \"desk/transmit/2\", \"from\": "
        + "\"desk/aux/2\"}\n  ] }\n}\n";

    [Fact]
    public void A_removed_element_takes_its_comma_along_and_nothing_else()
    {
        Expect(
            OnLines,
            ShowEdit.Remove(ShowLists.Routes, 0, First),
            OnLines.Replace("{ \"from\":\"desk/aux/1\",\"to\":\"desk/transmit/1\" },\n    ", "", StringComparison.Ordinal)
        );
        Expect(
            OnLines,
            ShowEdit.Remove(ShowLists.Routes, 1, Second),
            OnLines.Replace(",\n    {\"to\": \"desk/transmit/2\", \"from\": \"desk/aux/2\"}", "", StringComparison.Ordinal)
        );
    }

    [Fact]
    public void A_new_element_stands_on_one_line_in_the_indentation_of_its_neighbours()
    {
        const string written = "{ \"from\": null, \"to\": \"desk/transmit/9\" }";
        Expect(
            OnLines,
            ShowEdit.Insert(ShowLists.Routes, 0, New),
            OnLines.Replace("{ \"from\":\"desk/aux/1\"", written + ",\n    { \"from\":\"desk/aux/1\"", StringComparison.Ordinal)
        );
        Expect(
            OnLines,
            ShowEdit.Insert(ShowLists.Routes, 1, New),
            OnLines.Replace("{\"to\": \"desk/transmit/2\"", written + ",\n    {\"to\": \"desk/transmit/2\"", StringComparison.Ordinal)
        );
        Expect(
            OnLines,
            ShowEdit.Insert(ShowLists.Routes, 2, New),
            OnLines.Replace("\"desk/aux/2\"}", "\"desk/aux/2\"},\n    " + written, StringComparison.Ordinal)
        );
    }

    [Fact]
    public void A_changed_member_leaves_the_others_as_they_are_written() =>
        Expect(
            OnLines,
            ShowEdit.Replace(ShowLists.Routes, 1, Second, Second with { From = null }),
            OnLines.Replace("\"from\": \"desk/aux/2\"", "\"from\": null", StringComparison.Ordinal)
        );

    [Fact]
    public void Line_breaks_with_carriage_return_and_a_byte_order_mark_stay()
    {
        var text = "\uFEFF" + OnLines.Replace("\n", "\r\n", StringComparison.Ordinal);
        Expect(
            text,
            ShowEdit.Insert(ShowLists.Routes, 2, New),
            text.Replace("\"desk/aux/2\"}", "\"desk/aux/2\"},\r\n    { \"from\": null, \"to\": \"desk/transmit/9\" }", StringComparison.Ordinal)
        );
    }

    [Fact]
    public void A_list_or_a_whole_patch_that_is_not_there_is_made() =>
        Expect(
            Head.TrimEnd().TrimEnd(',') + "\n}\n",
            ShowEdit.Insert(ShowLists.Labels, 0, new PointLabel { At = At("desk/aux/1"), Text = "Kick \"in\"" }),
            Head + "  \"patch\": {\n    \"labels\": [\n      { \"at\": \"desk/aux/1\", \"text\": \"Kick \\\"in\\\"\" }\n    ]\n  }\n}\n"
        );

    [Fact]
    public void The_only_element_leaves_an_empty_list() =>
        Expect(
            Head + "  \"patch\": { \"routes\": [ { \"from\": \"desk/aux/1\", \"to\": \"desk/transmit/1\" } ] }\n}\n",
            ShowEdit.Remove(ShowLists.Routes, 0, First),
            Head + "  \"patch\": { \"routes\": [] }\n}\n"
        );

    [Fact]
    public void A_compact_text_stays_on_its_line() =>
        Expect(
            "{\"schemaVersion\":1,\"title\":\"T\",\"rig\":{},\"patch\":{\"routes\":[{\"from\":null,\"to\":\"a/b/1\"}]}}",
            ShowEdit.Insert(ShowLists.Routes, 0, New),
            "{\"schemaVersion\":1,\"title\":\"T\",\"rig\":{},\"patch\":{\"routes\":[{ \"from\": null, \"to\": \"desk/transmit/9\" "
                + "},{\"from\":null,\"to\":\"a/b/1\"}]}}"
        );

    [Fact]
    public void A_text_that_does_not_hold_the_edited_show_is_written_anew()
    {
        var other = ShowReader.Read(Encoding.UTF8.GetBytes(OnLines)).Value! with { Title = "Other" };
        var edited = ShowText.Edit(Encoding.UTF8.GetBytes(OnLines), [ShowEdit.Remove(ShowLists.Routes, 0, First)], other);
        Assert.True(edited.IsRewritten);
        Assert.Equal(ShowWriter.ToUtf8(other), edited.Utf8.ToArray());
    }

    [Fact]
    public void An_edit_does_not_fit_where_something_else_stands()
    {
        var show = ShowReader.Read(Encoding.UTF8.GetBytes(OnLines)).Value!;
        Assert.Null(ShowEdit.Remove(ShowLists.Routes, 1, First).Apply(show));
        Assert.Null(ShowEdit.Remove(ShowLists.Routes, 2, First).Apply(show));
        Assert.Null(ShowEdit.Insert(ShowLists.Routes, 3, First).Apply(show));
        Assert.Null(ShowEdit.Insert(ShowLists.Receivers(0), 0, new StreamReceiver { At = At("a/b/1") }).Apply(show));
    }

    private static void Expect(string text, ShowEdit edit, string expected)
    {
        var bytes = Encoding.UTF8.GetBytes(text);
        var read = ShowReader.Read(bytes);
        Assert.Empty(read.Findings);
        var edited = edit.Apply(read.Value!);
        Assert.NotNull(edited);
        var result = ShowText.Edit(bytes, [edit], edited);

        Assert.False(result.IsRewritten);
        Assert.Equal(expected, Encoding.UTF8.GetString(result.Utf8.Span));
        Assert.Equal(edited, ShowReader.Read(result.Utf8.Span).Value);
        var patched = result.Patch!.Apply(JsonNode.Parse(text.TrimStart('\uFEFF')));
        Assert.True(JsonNode.DeepEquals(patched, JsonNode.Parse(expected.TrimStart('\uFEFF'))));
    }
}
