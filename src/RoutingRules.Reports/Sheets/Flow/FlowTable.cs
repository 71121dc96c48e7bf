using RoutingRules.Reports.Sheets.Contents;
using RoutingRules.Reports.Sheets.Pages;

namespace RoutingRules.Reports.Sheets.Flow;

/// <summary>What runs between devices as a table, for writers that cannot draw.</summary>
internal static class FlowTable
{
    public static PageTable Of(SheetFlow flow)
    {
        var table = new PageTable { Title = flow.Title, Columns = [("By", 20), ("From", 20), ("To", 25), ("Signals", 35)] };
        for (var i = 0; i < flow.Nodes.Count; i++)
        {
            var node = flow.Nodes[i];
            if (node.Kind == SheetFlowKind.Bundle)
            {
                table.Rows.Add(
                    new PageRow
                    {
                        Cells =
                        [
                            [
                                .. PageLayout.Strong(node.Mark),
                                .. PageLayout.Cell(node.Name),
                                .. node.IsInEar ? [new PageLine(SheetWords.Mark(SheetMark.InEar), PageLineStyle.Mark)] : PageLayout.Cell(),
                            ],
                            PageLayout.Cell([.. flow.Edges.Where(edge => edge.To == i).Select(edge => Count(flow, edge.From, edge))]),
                            PageLayout.Cell([.. flow.Edges.Where(edge => edge.From == i).Select(edge => Count(flow, edge.To, edge))]),
                            PageLayout.Cell(node.Note),
                        ],
                    }
                );
            }
        }

        return table;
    }

    private static string Count(SheetFlow flow, int device, SheetFlowEdge edge) => $"{flow.Nodes[device].Mark}, {SheetWords.Number(edge.Count)}";
}
