using ParquetSharp;
using ParquetSharp.IO;

namespace CanopySim.Files.Batch;

/// <summary>
/// Tables as Parquet bytes: zstd, numbers without a dictionary, one row group, the schema's id beside the data. The same
/// table gives the same bytes.
/// </summary>
public static class ParquetTable
{
    private const string SchemaKey = "canopysim.schema";

    /// <param name="table">The table.</param>
    /// <param name="without">A column that is left out because the name of the folder says it; null for none.</param>
    public static byte[] Bytes(TableData table, string? without = null)
    {
        var kept = Enumerable.Range(0, table.Schema.Columns.Count)
            .Where(column => table.Schema.Columns[column].Name != without).ToList();
        Column[] columns = [.. kept.Select(column => table.Schema.Columns[column]).Select(column =>
            column.IsNumber ? (Column)new Column<double?>(column.Name) : new Column<string>(column.Name))];
        using var builder = new WriterPropertiesBuilder();
        builder.Compression(Compression.Zstd).CreatedBy("canopysim");
        foreach (var column in kept.Select(column => table.Schema.Columns[column]).Where(column => column.IsNumber))
            builder.DisableDictionary(column.Name);
        using var properties = builder.Build();
        using var memory = new MemoryStream();
        using (var stream = new ManagedOutputStream(memory, leaveOpen: true))
        using (var file = new ParquetFileWriter(
            stream, columns, properties, new Dictionary<string, string> { [SchemaKey] = table.Schema.Id }))
        {
            using (var group = file.AppendRowGroup())
            {
                foreach (var column in kept)
                {
                    using var next = group.NextColumn();
                    if (table.Schema.Columns[column].IsNumber)
                    {
                        using var writer = next.LogicalWriter<double?>();
                        writer.WriteBatch([.. table.Numbers(column)]);
                    }
                    else
                    {
                        using var writer = next.LogicalWriter<string>();
                        writer.WriteBatch([.. table.Texts(column)!]);
                    }
                }
            }

            file.Close();
        }

        return memory.ToArray();
    }

    /// <summary>The table of some bytes.</summary>
    /// <exception cref="InvalidDataException">They are no table of this schema.</exception>
    public static TableData Read(byte[] bytes, TableSchema schema)
    {
        try
        {
            using var memory = new MemoryStream(bytes);
            using var stream = new ManagedRandomAccessFile(memory, leaveOpen: true);
            using var file = new ParquetFileReader(stream);
            if (file.FileMetaData.KeyValueMetadata.GetValueOrDefault(SchemaKey) != schema.Id)
                throw new InvalidDataException("columns of another schema");
            var table = new TableData(schema);
            for (var index = 0; index < file.FileMetaData.NumRowGroups; index++)
            {
                using var group = file.RowGroup(index);
                var rows = checked((int)group.MetaData.NumRows);
                for (var column = 0; column < schema.Columns.Count; column++)
                {
                    using var next = group.Column(column);
                    if (schema.Columns[column].IsNumber)
                    {
                        using var reader = next.LogicalReader<double?>();
                        table.AppendColumn(column, reader.ReadAll(rows));
                    }
                    else
                    {
                        using var reader = next.LogicalReader<string?>();
                        table.AppendColumn(column, reader.ReadAll(rows));
                    }
                }

                table.CountRows(rows);
            }

            return table;
        }
        catch (ParquetException error)
        {
            throw new InvalidDataException(error.Message, error);
        }
    }
}
