# changes
